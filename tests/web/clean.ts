import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

interface Scope {
  /** Only these rules. */
  rules?: string[];
  /** Only this part of the page, where the rest is as it was. */
  within?: string;
  /** Without a look at its colours, which are those of what has been looked at. */
  sameColours?: boolean;
}

/** Fails on every accessibility fault that axe can find on the page as it stands. */
export async function clean(page: Page, { rules, within, sameColours }: Scope = {}): Promise<void> {
  // Closed folds are looked at open, and of the tables' and lists' many rows, all alike, three.
  const builder = new AxeBuilder({ page }).exclude('details:not([open])').exclude('.scroll tbody tr:nth-child(n+4)').exclude('option');
  if (within) builder.include(within);
  else builder.exclude('.list > .figure:nth-child(n+4)');
  // The page has no frames, so the mode without a second page will do, and only what fails is asked for.
  builder.setLegacyMode(true).options({ resultTypes: ['violations'] });
  if (sameColours) builder.disableRules('color-contrast');
  const { violations } = await (rules ? builder.withRules(rules) : builder).analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 160)} ${v.nodes[0]?.failureSummary ?? ''}`)).toEqual([]);
}
