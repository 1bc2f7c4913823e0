export const stillnessCautions = (): readonly string[] => [
  'Bright lamps, LEDs, flash, ultraviolet and above all lasers harm eyes, more so through an objective: no eye in the beam or behind it. Heed the lamp’s risk group (IEC 62471), its maker’s data sheet and local safety rules.',
  'Flashes one after the other can set off seizures in people who are sensitive to them: warn whoever is in the room, or shade the light.',
];
