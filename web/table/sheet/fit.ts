/** Sizes of type, pt: the largest that leaves the sheet on one page. Below the last it would not be read. */
const SIZES = [8.3, 7.9, 7.5, 7.1, 6.7, 6.3, 6];
/** What the margins leave of an A4 page (ISO 216), less a little for how printers set type, mm. */
const HEIGHT = 268;
const PX_PER_MM = 96 / 25.4;

/** Sets the sheet's type so that all of it stands on one page, as it is laid out there. */
export function fitToPage(sheet: HTMLElement): void {
  const copy = sheet.cloneNode(true) as HTMLElement;
  copy.classList.add('as-printed');
  document.body.append(copy);
  const size = SIZES.find((pt) => {
    copy.style.setProperty('--sheet-size', `${pt}pt`);
    return copy.offsetHeight <= HEIGHT * PX_PER_MM;
  });
  copy.remove();
  sheet.style.setProperty('--sheet-size', `${size ?? SIZES.at(-1)}pt`);
}
