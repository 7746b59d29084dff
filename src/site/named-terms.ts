/** Which glossary term explains the name of an input or a result. */

/** By name alone every term but these would do; these mean another thing in one formula, or nothing special. */
const OTHERWISE: Readonly<Record<string, string | undefined>> = {
  'perspective ratio': 'perspective',
  'perspective compare ratio': 'perspective',
  'perspective depth': undefined,
  'perspective near distance': undefined,
  'perspective far distance': undefined,
  'ambient-exposure margin': undefined,
  'stand-stability margin': 'overturning-moment',
  'mains-load margin': 'rating',
  'break-even margin': 'contribution',
  'beam-spread tilt': 'beam-angle',
  'depth-of-field near': 'depth-limits',
  'depth-of-field far': 'depth-limits',
  'movement-blur subject blur': 'movement-blur',
  'movement-blur sensor blur': 'movement-blur',
  'gel shift': 'mired-shift',
  'gel source': 'colour-temperature',
  'gel target': 'colour-temperature',
  'gel temperature': 'colour-temperature',
  'recompose-error angle': 'recompose',
  'softness angle': 'apparent-size',
  'beam-spread angle': 'beam-angle',
  'depth-of-field total': 'depth-of-field',
  'feathering turn': 'feathering',
};

/** Names that records use for a term, and readers would not look for under it. */
const CALLED: Readonly<Record<string, string>> = {
  horizontal: 'angle-of-view',
  vertical: 'angle-of-view',
  from: 'f-number',
  to: 'f-number',
  'from pupil': 'entrance-pupil',
  'to pupil': 'entrance-pupil',
  exact: 'mark',
  'in front': 'depth-of-field',
  behind: 'depth-of-field',
  'focus error': 'focus',
  'ambient blur': 'movement-blur',
  'edge width': 'shadow-edge',
  'edge height': 'shadow-edge',
  'same softness distance': 'softness',
  'nose shadow across': 'nose-shadow',
  'nose shadow down': 'nose-shadow',
  'catchlight x': 'catchlight',
  'catchlight y': 'catchlight',
  'under key': 'key-light',
  'over key': 'key-light',
  'card light': 'fill-card',
  definition: 'beam-angle',
  'spot over spill': 'spill',
  aim: 'optical-axis',
  'hidden edge': 'picture-mat',
  'edge depth': 'wrap',
  'fold over': 'wrap',
  'safe width': 'safe-area',
  'safe height': 'safe-area',
  'head mass': 'flash-head',
  'flash energy': 'joule',
  energy: 'joule',
  'Airy diameter': 'airy-disc',
  'EV marked': 'exposure-value',
  'GN ISO': 'guide-number',
  'aim height': 'optical-axis',
  'ambient under': 'ambient',
  'backdrop blur': 'blur-disc',
  calibration: 'calibration-constant',
  'equivalent focal length by width': 'equivalent-focal-length',
  'flash blur': 'movement-blur',
  'flash circles': 'circle-of-confusion',
  'flash t01': 't01',
  'flash t05': 't05',
  'foreground blur': 'blur-disc',
  'gel loss': 'modifier-loss',
  hyperfocal: 'hyperfocal',
  'key elevation': 'elevation',
  'key azimuth': 'azimuth',
  'key to fill': 'lighting-ratio',
  'light ratio': 'lighting-ratio',
  'light stops': 'stop',
  'lens offset': 'principal-plane',
  'lowest power': 'flash-power',
  marked: 'mark',
  'measured from': 'principal-plane',
  'metered EV': 'exposure-value',
  'metered power': 'flash-power',
  'nearest full': 'mark',
  'nearest half': 'mark',
  'nearest third': 'mark',
  'pixel limit f-number': 'diffraction',
  power: 'flash-power',
  'power needed': 'flash-power',
  'print aspect': 'aspect',
  'print blur': 'circle-of-confusion',
  'sensor blur': 'blur-disc',
  'subject blur': 'blur-disc',
  'wanted resolution': 'print-resolution',
  resolution: 'print-resolution',
  'view height': 'view',
  'view width': 'view',
  'view width bottom': 'view',
  'view width top': 'view',
  'widest marked': 'mark',
};

const MEASURE =
  /\s(?:angle|area|clearance|depth|direction|distance|height|length|mass|place|rate|share|size|speed|stops|width)$/;
const WHICH =
  /^(?:booked|compare|correct|hidden|largest|least|limit|longest|metered|nearest|needed|safe|same|second|third|to|wanted|widest)\s/;

export type Names = ReadonlyMap<string, string>;

/** Every term's id by its name and its other names, in small letters. */
export const namesOf = (
  terms: readonly { readonly id: string; readonly names: readonly string[] }[],
): Names =>
  new Map(terms.flatMap(({ id, names }) => names.map((name) => [name.toLowerCase(), id] as const)));

const byName = (names: Names, name: string): string | undefined =>
  names.get(name) ?? names.get(name.replace(/s$/, ''));

/**
 * The id of the term that explains a name, if there is one: “key distance” leads to the key, “wanted f-number” to the
 * f-number, and “margin” to what is meant by it in that formula.
 */
export const termFor = (
  names: Names,
  formula: string,
  { name, label }: { readonly name: string; readonly label?: string | undefined },
): string | undefined => {
  const here = `${formula} ${name}`;
  if (Object.hasOwn(OTHERWISE, here)) return OTHERWISE[here];
  if (Object.hasOwn(CALLED, name)) return CALLED[name];
  const [long, short] = [label ?? name, name].map((one) => one.toLowerCase()) as [string, string];
  return (
    byName(names, long) ??
    byName(names, short) ??
    byName(names, long.replace(/^incidence,.*/, 'incidence')) ??
    byName(names, short.replace(MEASURE, '')) ??
    byName(names, short.replace(WHICH, ''))
  );
};
