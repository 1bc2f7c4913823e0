import type { SheetContents } from './contents.ts';

/** What stands for itself in Markdown (CommonMark), on one line, whatever a person calls their parts. */
const plain = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_{}[\]<>#|&~]/g, (c) => `\\${c}`)
    // At the beginning these make a list, a line or a heading of what comes before.
    .replace(/^( ?)([-+=])(?=[\s=-]|$)/, '$1\\$2')
    .replace(/^( ?\d+)([.)])(?=\s|$)/, '$1\\$2');

const list = (items: readonly string[]): string[] => items.map((item) => `- ${plain(item)}`);

/** The sheet as Markdown. */
export function sheetMarkdown({ title, on, parts, verdict, sentence, blocks, guesses, cautions, link }: SheetContents): string {
  const paragraphs = [
    `# ${plain(title)}`,
    `${plain(parts.join(' · '))}  \n${on}`,
    `**${plain(verdict)}** ${plain(sentence)}`,
    ...blocks.flatMap((block) => [
      `## ${plain(block.title)}`,
      ...block.says.map(plain),
      ...(block.list.length > 0 ? [block.list.map((item, i) => `${i + 1}. ${plain(item)}`).join('\n')] : []),
      ...(block.lines.length > 0 ? [block.lines.map(([name, value]) => `- ${plain(name)}: ${plain(value)}`).join('\n')] : []),
    ]),
    ...(guesses.length > 0 ? ['## Rests on guesses: measure the first of these first', list(guesses).join('\n')] : []),
    ...(cautions.length > 0 ? ['## Mind', list(cautions).join('\n')] : []),
    `<${link}>`,
  ];
  return `${paragraphs.join('\n\n')}\n`;
}
