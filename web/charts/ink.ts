/** The page's own colours, as a canvas needs them. */
export interface Ink {
  ink: string;
  paper: string;
  faint: string;
  hair: string;
  accent: string;
  font: string;
}

export function inkOf(element: Element): Ink {
  const style = getComputedStyle(element);
  const at = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: at('--ink'),
    paper: at('--paper'),
    faint: at('--faint'),
    hair: at('--hair'),
    accent: at('--accent'),
    font: style.fontFamily,
  };
}

/** On white paper from a printer, whatever the screen is like. */
export const PRINTED: Omit<Ink, 'font'> = { ink: '#000', paper: '#fff', faint: '#444', hair: '#999', accent: '#000' };
