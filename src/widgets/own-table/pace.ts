/** How long work goes on before the page may have a turn, in milliseconds. */
const SLICE = 8;

interface Yielding {
  readonly scheduler?: { yield?: () => Promise<void> };
}

/** Lets the page do what waits to be done: keys, pointers, a frame. */
const rest = (): Promise<void> => {
  const { scheduler } = globalThis as Yielding;
  if (scheduler?.yield) return scheduler.yield();
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(undefined);
  });
};

/** Until the page has been set, so that what was added is laid out before more is; at once where nobody sees it. */
const frame = (): Promise<void> =>
  document.hidden
    ? rest()
    : new Promise((done) => {
        requestAnimationFrame(() => void rest().then(done));
      });

/**
 * Does work in slices, and gives the page its turn between them.
 * @param work does a little at each `next`; yields true where enough has come together to be laid out
 * @param going asked before every slice; the work is left where it says no
 * @returns whether it came to its end
 */
export const inSlices = async (
  work: Iterator<boolean, void>,
  going: () => boolean,
): Promise<boolean> => {
  for (;;) {
    const until = performance.now() + SLICE;
    let set = false;
    do {
      const step = work.next();
      if (step.done) return true;
      set ||= step.value;
    } while (performance.now() < until);
    await (set ? frame() : rest());
    if (!going()) return false;
  }
};
