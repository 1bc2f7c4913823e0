import type { TableEvaluation } from '../evaluate.ts';

export const infinityCautions = ({ pairing }: TableEvaluation): readonly string[] => [
  'Never set infinity by the sun, and never aim a long lens near it: through a lens it destroys eyes and sensors in an instant.',
  ...(pairing.relay.glass
    ? ["What the relay's own glass does off its focus is not counted here: only the objective's spherical aberration is."]
    : []),
];
