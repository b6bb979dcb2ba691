/** A page or picture of the engine's, drawn by React; nothing in it is ever taken for markup. */
import { createElement, type ReactNode } from 'react';
import type { Node } from '../../../engine/refit/sheets/index.ts';

/** What React calls otherwise than the page does. */
const NAMES: Readonly<Record<string, string>> = { class: 'className', 'text-anchor': 'textAnchor' };

export function drawNode(node: Node, key?: number): ReactNode {
  if (typeof node === 'string') return node;
  const attributes = Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [NAMES[name] ?? name, value]),
  );
  return createElement(node.tag, { ...attributes, key }, ...node.children.map((child) => drawNode(child)));
}
