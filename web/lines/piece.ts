/** What the lines need once somebody turns to one of them, in one piece. */
export { Numbers } from './numbers.tsx';
export { type Option, offerFor, optionsIn } from './offer.ts';
export { Popup } from './popup.tsx';
export { type Ground, understood } from './understood.ts';
