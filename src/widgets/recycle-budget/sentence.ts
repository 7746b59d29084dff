import type { Sentence } from '../parts/calculator.ts';

/** Whether the flash is ready for the next frame; with the caution about fast flashing. */
export const sentence: Sentence = (_given, results, show) => {
  const fast =
    Number(results['flashes']) >= 3
      ? ' Caution: from three flashes a second up, photosensitive people can be harmed. Ask beforehand, slow down, stop at once if asked.'
      : '';
  const hour =
    results['hour'] === undefined ? '' : ` In an hour that takes ${show.result('hour')}.`;
  return Number(results['wait']) > 0
    ? [
        { text: 'The next frame comes ' },
        { text: show.result('wait'), main: true },
        { text: ` too soon: one in full light, then wait.${hour}${fast}` },
      ]
    : [
        { text: 'The flash is ' },
        { text: 'ready in time', main: true },
        { text: `, at ${show.result('flashes')}.${hour}${fast}` },
      ];
};
