/** A page as a tree, drawn by the browser's screen and by a file alike; nothing in it is ever taken for markup. */

export interface Element {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
}
export type Node = Element | string;

export const element = (
  tag: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly (Node | undefined | readonly Node[])[]
): Element => ({ tag, attributes, children: children.flatMap((each) => each ?? []) as readonly Node[] });

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
/** Text that is text in HTML and in SVG, between tags as in an attribute. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => ESCAPES[letter]!);

/** The tree as HTML. */
export function toHtml(node: Node): string {
  if (typeof node === 'string') return escaped(node);
  const attributes = Object.entries(node.attributes)
    .map(([name, value]) => ` ${name}="${escaped(value)}"`)
    .join('');
  return `<${node.tag}${attributes}>${node.children.map(toHtml).join('')}</${node.tag}>`;
}
