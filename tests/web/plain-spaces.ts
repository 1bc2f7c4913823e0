import type { Page } from 'playwright-core';

/**
 * The page sets spaces that no line breaks at (`web/typeset.ts`, held by a test of its own). Whatever else reads its text
 * takes them for the spaces that they are, from outside the page and from inside.
 */
export async function withPlainSpaces(page: Page): Promise<Page> {
  type Reads = { textContent: Page['textContent']; plain?: true };
  // Page and locators ask their frame.
  const frames = Object.getPrototypeOf(page.mainFrame()) as Reads;
  if (!frames.plain) {
    const { textContent } = frames;
    frames.plain = true;
    frames.textContent = async function (...asked) {
      return (await textContent.apply(this as Page, asked))?.replaceAll('\u00a0', ' ') ?? null;
    };
  }
  await page.addInitScript(() => {
    const own = Object.getOwnPropertyDescriptor(Node.prototype, 'textContent') as PropertyDescriptor;
    Object.defineProperty(Node.prototype, 'textContent', {
      ...own,
      get() {
        return own.get?.call(this)?.replaceAll('\u00a0', ' ') ?? null;
      },
    });
  });
  return page;
}
