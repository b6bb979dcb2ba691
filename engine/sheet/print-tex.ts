/** An expression as TeX. */
import type { Expression, OperationNode } from './expression.ts';
import { GREEK } from './letters.ts';

const HOLD = {
  choose: 0,
  or: 1,
  and: 2,
  not: 3,
  compare: 4,
  add: 5,
  multiply: 6,
  negate: 7,
  power: 8,
  atom: 9,
};

const COMPARE: Readonly<Record<string, string>> = {
  less: '<',
  lessOrEqual: '\\le',
  greater: '>',
  greaterOrEqual: '\\ge',
  equal: '=',
  unequal: '\\ne',
};

const NAMES: Readonly<Record<string, string>> = {
  min: '\\min',
  max: '\\max',
  exp: '\\exp',
  ln: '\\ln',
  log10: '\\log_{10}',
  sin: '\\sin',
  cos: '\\cos',
  tan: '\\tan',
  asin: '\\arcsin',
  acos: '\\arccos',
  atan: '\\arctan',
};

/** TeX of a leaf and whether it is one symbol; a value with its unit is not. */
export interface TexLeaf {
  readonly tex: string;
  readonly word: boolean;
}
export type TexLeaves = (key: string) => TexLeaf;

const subscript = (part: string): string => (/^([A-Za-z]|\d+)$/.test(part) ? part : `\\mathrm{${part}}`);

/** `eta_b` as `\eta_{b}`, `L10` as `L_{10}`, `n_max` as `n_{\mathrm{max}}`. */
export function texKey(key: string): string {
  const [head = '', ...rest] = key.split('_');
  const [, letters = head, digits = ''] = /^([A-Za-z]+)(\d*)$/.exec(head) ?? [];
  const main = Object.hasOwn(GREEK, letters)
    ? `\\${letters}`
    : letters.length > 1
      ? `\\mathit{${letters}}`
      : letters;
  const below = [digits, ...rest].filter((part) => part !== '').map(subscript);
  return below.length > 0 ? `${main}_{${below.join(',')}}` : main;
}

type Printed = readonly [tex: string, hold: number];

export const texText = (expression: Expression, leaves: TexLeaves): string => print(expression, leaves)[0];

/** A number of the formula itself: `6.6 \times 10^{-5}` for 6.6e-5. */
export function numberTex(value: number): string {
  const [head = '', exponent] = String(value).replace('e+', 'e').split('e');
  return exponent === undefined ? head : `${head} \\times 10^{${exponent}}`;
}

function print(node: Expression, leaves: TexLeaves): Printed {
  if (node.kind === 'number') {
    if (node.name === 'pi') return ['\\pi', HOLD.atom];
    const tex = numberTex(node.value);
    return [tex, node.value < 0 ? HOLD.negate : tex.includes('times') ? HOLD.multiply : HOLD.atom];
  }
  if (node.kind === 'symbol') {
    const leaf = leaves(node.key);
    return [leaf.tex, leaf.word ? HOLD.atom : leaf.tex.startsWith('-') ? HOLD.compare : HOLD.multiply];
  }
  return printOperation(node, leaves);
}

function printOperation(node: OperationNode, leaves: TexLeaves): Printed {
  const at = (index: number, least: number): string => {
    const [tex, hold] = print(node.args[index]!, leaves);
    // A sign of its own never follows another: 'a · (−b)'.
    const signed = index > 0 && hold === HOLD.negate && least > HOLD.or;
    return hold < least || signed ? `\\left(${tex}\\right)` : tex;
  };
  const h = HOLD;
  switch (node.operation) {
    case 'add':
      return [`${at(0, h.add)} + ${at(1, h.add)}`, h.add];
    case 'subtract':
      return [`${at(0, h.add)} - ${at(1, h.multiply)}`, h.add];
    case 'multiply':
      return [`${at(0, h.multiply)} \\cdot ${at(1, h.multiply)}`, h.multiply];
    case 'divide':
      return [`\\frac{${at(0, h.choose)}}{${at(1, h.choose)}}`, h.multiply];
    case 'negate':
      return [`-${at(0, h.negate)}`, h.negate];
    case 'power':
      return [`${at(0, h.atom)}^{${at(1, h.choose)}}`, h.power];
    case 'and':
      return [`${at(0, h.and)} \\text{ and } ${at(1, h.and)}`, h.and];
    case 'or':
      return [`${at(0, h.or)} \\text{ or } ${at(1, h.or)}`, h.or];
    case 'not':
      return [`\\text{not } ${at(0, h.atom)}`, h.not];
    case 'choose':
      return [
        `\\begin{cases} ${at(1, h.or)} & \\text{if } ${at(0, h.or)} \\\\ ${at(2, h.or)} & \\text{otherwise} \\end{cases}`,
        h.choose,
      ];
    case 'sqrt':
      return [`\\sqrt{${at(0, h.choose)}}`, h.atom];
    case 'abs':
      return [`\\left|${at(0, h.choose)}\\right|`, h.atom];
    case 'floor':
      return [`\\left\\lfloor ${at(0, h.choose)}\\right\\rfloor`, h.atom];
    case 'ceil':
      return [`\\left\\lceil ${at(0, h.choose)}\\right\\rceil`, h.atom];
    default: {
      const compare = COMPARE[node.operation];
      if (compare) return [`${at(0, h.add)} ${compare} ${at(1, h.add)}`, h.compare];
      const name = NAMES[node.operation] ?? `\\operatorname{${node.operation}}`;
      const args = node.args.map((_, index) => at(index, h.or)).join(', ');
      return [`${name}\\left(${args}\\right)`, h.power];
    }
  }
}

const SPECIAL: Readonly<Record<string, string>> = {
  ' ': '\\,',
  '·': '{\\cdot}',
  '×': '{\\times}',
  '−': '-',
  '±': '\\pm ',
  '%': '\\%',
  '°': '{}^{\\circ}',
  Ω: '\\Omega ',
  µ: '\\mu ',
  μ: '\\mu ',
  '‰': '\\text{‰}',
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** A quantity as printed, `6.6 × 10⁻⁵ kg·m²`, as TeX with upright units. */
export function quantityTex(text: string): string {
  return text
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+/g, (raised) => {
      const digits = [...raised].map((each) => (each === '⁻' ? '-' : RAISED.indexOf(each))).join('');
      return `^{${digits}}`;
    })
    .replace(/[A-Za-z]+|[ ·×−±%°Ωµμ‰]/g, (part) => SPECIAL[part] ?? `\\mathrm{${part}}`);
}
