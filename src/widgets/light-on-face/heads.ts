import { bust, develop, light, look, unlit } from '../../drawing/lit-head/portrait.ts';
import type { Lights, Lit } from '../../drawing/lit-head/portrait.ts';
import type { Mesh } from '../../drawing/lit-head/mesh.ts';
import { FINE, ROUGH } from '../../drawing/lit-head/shadow.ts';
import type { View } from '../../drawing/lit-head/view.ts';

/** What both heads are to show. */
export interface Wanted {
  readonly turn: number;
  /** Millimetres. */
  readonly nose: number;
  readonly lights: readonly Lights[];
  readonly skin: Parameters<typeof develop>[3];
}

/** A head as it was last painted, for the meter to read. */
export interface Painted {
  readonly view: View;
  readonly lit: Lit;
  readonly turn: number;
}

/** Pixels across while something moves; and at most when it has come to rest. */
const [MOVING, MOST] = [128, 440];
/** The moving head's mesh, against the resting one's. */
const COARSE = 0.4;
/** Milliseconds at rest before the fine picture is begun, and that one stretch of it may take. */
const [REST, STRETCH] = [160, 8];

/** Gives the page its turn between two pieces of work. */
const pause = (): Promise<void> => new Promise((done) => setTimeout(done));

/**
 * Paints the heads: coarsely at once while something moves, one head after the other, each in a turn of its own; and
 * finely in short stretches when it has come to rest. Whatever is asked for meanwhile takes its place.
 */
export const heads = (
  canvases: readonly HTMLCanvasElement[],
  painted: (at: number, head: Painted, fine: boolean) => void,
): ((wanted: Wanted) => void) => {
  let [asked, begun] = [0, false];
  let now: Wanted | undefined;
  let meshes: { readonly nose: number; readonly fineness: number; readonly of: readonly Mesh[] }[] =
    [];
  const views = new Map<boolean, { readonly key: string; readonly view: View }>();

  const meshOf = (nose: number, fineness: number): readonly Mesh[] => {
    const kept = meshes.find((one) => one.nose === nose && one.fineness === fineness);
    if (kept) return kept.of;
    const of = bust(nose, fineness);
    meshes = [...meshes.filter((one) => one.fineness !== fineness), { nose, fineness, of }];
    return of;
  };
  const viewOf = ({ nose, turn }: Wanted, width: number, fine: boolean): View => {
    const key = [nose, turn, width].join();
    const kept = views.get(fine);
    if (kept?.key === key) return kept.view;
    const view = look(meshOf(nose, fine ? 1 : COARSE), width, turn);
    views.set(fine, { key, view });
    return view;
  };

  const put = (
    canvas: HTMLCanvasElement,
    view: View,
    pixels: Uint8ClampedArray<ArrayBuffer>,
  ): void => {
    const context = canvas.getContext('2d');
    if (!context) return;
    const image = new ImageData(pixels, view.width, view.height);
    if (view.width === canvas.width && view.height === canvas.height) {
      context.putImageData(image, 0, 0);
      return;
    }
    const small = new OffscreenCanvas(view.width, view.height);
    small.getContext('2d')?.putImageData(image, 0, 0);
    context.imageSmoothingQuality = 'high';
    context.drawImage(small, 0, 0, canvas.width, canvas.height);
  };

  /** The whole head in one go, coarse enough for it. */
  const rough = (wanted: Wanted, at: number): void => {
    const [canvas, lights] = [canvases[at], wanted.lights[at]];
    if (!canvas || !lights) return;
    const view = viewOf(wanted, MOVING, false);
    const lit = unlit(view, lights);
    light(view, lights, lit, ROUGH);
    const pixels = new Uint8ClampedArray(4 * view.z.length);
    develop(view, lights, lit, wanted.skin, pixels);
    put(canvas, view, pixels);
    painted(at, { view, lit, turn: wanted.turn }, false);
  };

  /** Row by row, as many as a stretch allows; false when something else was asked for. */
  const fine = async (wanted: Wanted, at: number): Promise<boolean> => {
    const [canvas, lights] = [canvases[at], wanted.lights[at]];
    if (!canvas || !lights) return true;
    // Where pixels are large a picture of more of them, made smaller, has smooth edges.
    const width = Math.min(MOST, Math.round(canvas.width * (devicePixelRatio < 1.5 ? 2 : 1)));
    meshOf(wanted.nose, 1);
    await pause();
    if (now !== wanted) return false;
    const view = viewOf(wanted, width, true);
    const lit = unlit(view, lights);
    const pixels = new Uint8ClampedArray(4 * view.z.length);
    let [row, rows] = [0, 4];
    while (row < view.height) {
      await pause();
      if (now !== wanted) return false;
      const start = performance.now();
      const end = Math.min(view.height, row + rows);
      light(view, lights, lit, FINE, row, end);
      develop(view, lights, lit, wanted.skin, pixels, row, end);
      const took = performance.now() - start;
      rows = Math.max(2, Math.min(64, Math.round((rows * STRETCH) / Math.max(took, 1))));
      row = end;
    }
    put(canvas, view, pixels);
    painted(at, { view, lit, turn: wanted.turn }, true);
    return true;
  };

  let rest: ReturnType<typeof setTimeout> | undefined;
  /** One head a turn of the page; when nothing new was asked for meanwhile, the work is done. */
  const run = async (): Promise<void> => {
    begun = true;
    let done = 0;
    while (now && done < canvases.length) {
      const wanted = now;
      await pause();
      rough(wanted, asked % canvases.length);
      asked += 1;
      done = now === wanted ? done + 1 : 0;
    }
    begun = false;
    clearTimeout(rest);
    rest = setTimeout(() => {
      const wanted = now;
      if (wanted)
        void (async () => {
          for (const at of canvases.keys()) if (!(await fine(wanted, at))) return;
        })();
    }, REST);
  };

  return (wanted) => {
    now = wanted;
    clearTimeout(rest);
    if (!begun) void run();
  };
};
