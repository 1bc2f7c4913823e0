/** Sizes of type, pt: the largest that leaves the sheet on one page. Below the last it would not be read. */
const SIZES = [8.3, 7.9, 7.5, 7.1, 6.7, 6.3, 6];
/** What the margins leave of an A4 page (ISO 216), less a little for how printers set type, mm. */
const HEIGHT = 268;
const PX_PER_MM = 96 / 25.4;

/** What gives way where even the smallest type leaves no room: how to measure stands on the page too. */
const SPARE = '.spare';

/** Sets the sheet's type so that all of it stands on one page, as it is laid out there. */
export function fitToPage(sheet: HTMLElement): void {
  const copy = sheet.cloneNode(true) as HTMLElement;
  copy.classList.add('as-printed');
  document.body.append(copy);
  const fits = (pt: number): boolean => {
    copy.style.setProperty('--sheet-size', `${pt}pt`);
    return copy.offsetHeight <= HEIGHT * PX_PER_MM;
  };
  let size = SIZES.find(fits);
  if (size === undefined) {
    for (const one of copy.querySelectorAll(SPARE)) one.remove();
    size = SIZES.find(fits);
    for (const one of sheet.querySelectorAll<HTMLElement>(SPARE)) one.hidden = true;
  } else for (const one of sheet.querySelectorAll<HTMLElement>(SPARE)) one.hidden = false;
  copy.remove();
  sheet.style.setProperty('--sheet-size', `${size ?? SIZES.at(-1)}pt`);
}
