/** The error that a call ends in. @module */

/**
 * Waits for a call to fail.
 * @param call - a call that should fail
 * @returns what it failed with; its type is the test's business
 * @throws Error when the call succeeds
 */
// biome-ignore lint/suspicious/noExplicitAny: tests look into errors of every class.
export async function failureOf(call: PromiseLike<unknown>): Promise<any> {
  try {
    await call;
  } catch (error) {
    return error;
  }
  throw new Error("The call succeeded.");
}
