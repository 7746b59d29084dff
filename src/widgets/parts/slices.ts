/** Milliseconds of work between two chances for the page to do anything else. */
const SLICE = 12;

const rest = (): Promise<void> =>
  new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => done();
    port2.postMessage(null);
  });

/**
 * Does something for each of many things without ever holding the page up.
 * @param heard called between slices with how many are done; false stops
 * @returns what was made, or undefined where it was stopped
 */
export const inSlices = async <T, U>(
  things: readonly T[],
  act: (thing: T, at: number) => U,
  heard: (done: number) => boolean,
): Promise<readonly U[] | undefined> => {
  const made: U[] = [];
  let since = performance.now();
  for (const [at, thing] of things.entries()) {
    made.push(act(thing, at));
    if (performance.now() - since < SLICE) continue;
    if (!heard(made.length)) return undefined;
    await rest();
    since = performance.now();
  }
  return heard(made.length) ? made : undefined;
};
