/** Names of a part that say the same thing in different ways: stating one unsays the others. */
export const RULES = [
  { of: 'relay', names: ['focalLengthMm', 'powerDioptre'] },
  { of: 'relay', names: ['entrancePupilDiameterMm', 'fNumber'] },
  { of: 'sensor', names: ['pixelPitchUm', 'columns', 'rows'] },
] as const satisfies readonly { of: string; names: readonly string[] }[] as readonly { of: string; names: readonly string[] }[];
