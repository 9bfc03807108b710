import usual from "../../.config/vitest.config.ts";

/** Everything that a mutant's run needs is in one module, see bundle.mjs; the runner leaves it to Node to load. */
export default {
  ...usual,
  test: {
    ...usual.test,
    include: ["tests/mutation/built/run.test.mjs"],
    server: { deps: { external: [/mutation\/built\/all/] } },
  },
};
