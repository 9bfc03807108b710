/**
 * The same samples in every run of the property tests, so that a change is judged by what it changes.
 * `FRESH_SAMPLES=1 npm test` draws new ones: run it now and then, and keep what it finds as an example.
 */
import fc from "fast-check";

if (!process.env.FRESH_SAMPLES) fc.configureGlobal({ seed: 1926 });
