import { render } from 'preact';
import { z } from 'zod';
import './styles/face.css';
import './styles/plate.css';
import './styles/head.css';
import './styles/page.css';
import './styles/fields.css';
import './styles/drawings.css';
import './styles/figures.css';
import './styles/print.css';
import { keepAtHand } from './offline/keep.ts';
import { Page } from './page.tsx';
import { followAddress } from './state/address.ts';
import { followCatalogue } from './state/catalogue.ts';
import { keepNumbersWhole } from './typeset.ts';

// The server's content policy forbids code made from text, which zod would otherwise try.
z.config({ jitless: true });

keepNumbersWhole();
followAddress();
const page = document.getElementById('page');
if (page) {
  page.replaceChildren();
  render(<Page />, page);
}
followCatalogue();
keepAtHand();
