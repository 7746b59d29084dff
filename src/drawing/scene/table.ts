import type { Place, Scene } from './scene.ts';

/** Where everything in a scene stands, for those who would rather read it. */
export const placesTable = (
  { camera, sitter, lights, cards = [] }: Scene,
  length: (metres: number) => string,
): { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] } => {
  const row = (name: string, at: Place): string[] => [
    name,
    length(at.behind),
    length(at.aside),
    length(at.height),
  ];
  return {
    head: ['what', 'behind the sitter', 'to camera-right', 'over the floor'],
    rows: [
      ...(camera ? [row('camera', camera.at)] : []),
      ...(sitter ? [row(sitter.kind === 'child' ? 'child' : 'knitted rabbit', sitter.seat)] : []),
      ...lights.map((light) => row(light.name, light.at)),
      ...cards.map((card) => row(card.name, card.at)),
    ],
  };
};
