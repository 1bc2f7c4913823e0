/** Said wherever light is set up or flashed. */
export const BRIGHT_LIGHT =
  'Bright LEDs, flash, ultraviolet and laser light can harm eyes, most of all through an objective: look at the screen, not into the beam, mind the risk group on the lamp (IEC 62471), and follow its maker and local safety rules.';

/** Said wherever a flash fires again and again. */
export const FLASHES =
  'Flashes one after the other can set off seizures in people who are sensitive to them: warn whoever is in the room, or shade the light.';
