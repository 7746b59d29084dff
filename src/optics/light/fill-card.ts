import type { Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { plain } from '../lens/worked.ts';
import { reach } from './extended-source.ts';

interface Card {
  readonly w: Length;
  readonly d: Length;
  readonly rho: Ratio;
  readonly light: Stops;
}

/** The card's light at the face over the key's. */
const share = ({ w, d, rho, light }: Card): number =>
  rho * 2 ** light * reach({ shape: 'disc', w, h: undefined }, d);

export default defineFormula({
  id: 'fill-card',
  title: 'Fill card',
  tex: String.raw`\frac{F}{K} = \rho\,2^{c}\,\frac{r^2}{r^2 + d^2}`,
  spoken: 'F over K equals rho times two to the c, times r squared over r squared plus d squared',
  inputs: {
    w: {
      name: 'size',
      tex: '2r',
      unit: 'm',
      range: [0.01, 20],
      span: [0.2, 2.5],
      start: 1,
      means: 'how wide the round card is; a square one counts a little more',
    },
    d: {
      name: 'distance',
      tex: 'd',
      unit: 'm',
      range: [0.01, 100],
      span: [0.2, 3],
      start: 0.6,
      means: 'from the card to the shadow side of the face',
    },
    rho: {
      name: 'reflectance',
      tex: String.raw`\rho`,
      unit: '1',
      range: [0.01, 1],
      span: [0.05, 1],
      start: 0.9,
      means: 'the share of light it sends back: white card 0.9, grey 0.18, black 0.04',
    },
    light: {
      name: 'card light',
      tex: 'c',
      unit: 'stop',
      range: [-20, 20],
      span: [-4, 2],
      start: -1.2,
      default: 0,
      means: 'how much stronger the key is on the card than on the face; negative is weaker',
    },
  },
  outputs: {
    under: {
      name: 'under key',
      label: 'under the key',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how many stops the card’s light is under the key at the face',
    },
    ratio: {
      name: 'ratio',
      tex: 'R',
      unit: '1',
      digits: { significant: 2 },
      means: '(key + fill) to fill, were the card the only fill',
    },
  },
  compute(card) {
    return {
      under: -Math.log2(share(card)) as Stops,
      ratio: (1 + 1 / share(card)) as Ratio,
    };
  },
  slips: {
    'diameter-for-radius': {
      compute: (card) => ({
        under: -Math.log2(share({ ...card, w: (2 * card.w) as Length })) as Stops,
      }),
      say: 'That takes the card’s diameter for its radius.',
    },
  },
  worked: {
    tex: String.raw`\frac{F}{K} = \val{rho} \times \val{light} \times \frac{(\val{r})^2}{(\val{r2})^2 + (\val{d})^2} = \val{share}`,
    values: (card) => ({
      rho: { value: card.rho, unit: '1', digits: { significant: 2 } },
      light: { value: 2 ** card.light, unit: '1', digits: { significant: 2 } },
      r: plain((card.w / 2) as Length, 'm'),
      r2: plain((card.w / 2) as Length, 'm'),
      d: plain(card.d, 'm'),
      share: { value: share(card), unit: '1', digits: { significant: 2 } },
    }),
  },
  symbols: [{ tex: 'F/K', means: 'the card’s light at the face over the key’s' }],
  model:
    'A matt card, evenly lit, square to the shadow side; the shadow side gets no other light but the key’s reflection in it.',
  breaks:
    'A silvered card mirrors: it gives more, in one direction. A card set on edge to the key gets less light than the face: say so in card light. Children pull cards over: weight them.',
  sources: ['cie-eilv-lambert'],
});
