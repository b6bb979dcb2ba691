import { expect, test } from 'vitest';
import type { Finding } from '../../engine/assess/index.ts';
import { harmless, type Io } from '../io.ts';
import { printFindings, sayChance } from './findings.ts';
import { marginRule, RULE_SCALE, RULE_WIDTH, sayMargin } from './margin.ts';
import { worstFirst } from './order.ts';
import { pageOn } from './page.ts';
import { quoted, widthOf, wrap } from './text.ts';

const finding = (of: Partial<Finding>): Finding => ({
  id: 'X.whirl',
  check: 'whirl',
  chain: 'X',
  place: 'screw',
  title: 'Whirling of the screw',
  form: 'ratio',
  verdict: 'fits',
  sentence: 'The screw turns at 1200 r/min and may turn at 2400 r/min before it whirls.',
  facts: [],
  guesses: [],
  missing: [],
  policies: [],
  ...of,
});

const RATED = finding({
  asked: { value: 125.66, doubt: 1, unit: 'r/min' },
  there: { value: 251.3, doubt: 2, unit: 'r/min' },
  margin: 2,
  marginRange: [1.8, 2.2],
  basis: 'measured',
});

function printed(columns: number, findings: readonly Finding[], terminal = false, env = {}): string[] {
  let text = '';
  const out = (more: string): void => {
    text += more;
  };
  const io: Io = { out, err: out, columns, terminal, env, now: () => '' };
  printFindings(pageOn(io), findings);
  return text.split('\n');
}

test('derived: the scale stands where the rule puts its margins', () => {
  expect(RULE_SCALE).toHaveLength(RULE_WIDTH);
  for (const [margin, mark] of [
    [0.5, '½'],
    [1, '1'],
    [2, '2'],
    [4, '4'],
  ] as const)
    expect(marginRule({ margin }).indexOf('●'), mark).toBe(RULE_SCALE.indexOf(mark));
  expect(marginRule({ margin: 2 }).indexOf('|')).toBe(RULE_SCALE.indexOf('1'));
});

test('derived: a margin a trifle from one stands on its own side, in the number and on the rule', () => {
  expect(sayMargin({ margin: 0.99996 })).toBe('×0.99996');
  expect(sayMargin({ margin: 1 - 1e-14 })).not.toBe('×1');
  const one = marginRule({ margin: 1.2 }).indexOf('|');
  expect(marginRule({ margin: 0.9999 }).indexOf('●')).toBeLessThan(one);
  expect(marginRule({ margin: 1.0001 }).indexOf('●')).toBeGreaterThan(one);
  expect(marginRule({ margin: 0 }).indexOf('●')).toBe(0);
  expect(marginRule({ margin: 1e9 }).indexOf('●')).toBe(RULE_WIDTH - 1);
});

test('derived: without a margin stands a dash, and no rule', () => {
  expect(sayMargin({ margin: null })).toBe('–');
  expect(sayMargin({})).toBe('–');
  expect(marginRule({ margin: null })).toBe('');
});

test('derived: a chance that is all but certain is not said', () => {
  expect(sayChance({ chance: 0.9951, verdict: 'fits' })).toBeUndefined();
  expect(sayChance({ chance: 0.83, verdict: 'tight' })).toContain('83 %');
  expect(sayChance({ chance: 0.0000001, verdict: 'fails' })).toContain('less than 0.1 %');
});

test.each([30, 40, 60, 80, 100, 120, 200])('derived: no line is wider than a terminal of %i', (columns) => {
  const findings = [
    RATED,
    finding({ verdict: 'unknown', title: 'Count rate of the control’s encoder input' }),
  ];
  const lines = printed(columns, findings);
  for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(columns);
  for (const word of ['fits', 'unknown', 'measured', '×2']) expect(lines.join('\n'), word).toContain(word);
  expect(lines.some((line) => line.includes('●') && line.includes('|'))).toBe(columns >= 120);
});

test('derived: colour only on a terminal, not where NO_COLOR is set or the terminal is dumb', () => {
  const escapes = (terminal: boolean, env = {}): boolean =>
    printed(100, [RATED], terminal, env).join('').includes('\u001b');
  expect(escapes(true)).toBe(true);
  expect(escapes(false)).toBe(false);
  expect(escapes(true, { NO_COLOR: '1' })).toBe(false);
  expect(escapes(true, { TERM: 'dumb' })).toBe(false);
});

test('derived: fails before unknown before tight before fits, the smaller margin first', () => {
  const verdicts = ['fits', 'tight', 'unknown', 'fails'] as const;
  const mixed = [
    ...verdicts.map((verdict) => finding({ verdict, id: verdict })),
    finding({ verdict: 'fails', id: 'worse', margin: 0.2 }),
    finding({ verdict: 'fails', id: 'bad', margin: 0.9 }),
    finding({ verdict: 'fails', id: 'no', form: 'fact' }),
  ];
  expect(worstFirst(mixed).map(({ id }) => id)).toEqual([
    'no',
    'worse',
    'bad',
    'fails',
    'unknown',
    'tight',
    'fits',
  ]);
});

test('derived: control characters reach a terminal only as our own colours', () => {
  expect(harmless('a\u001b[31mb\u001b[39mc', true)).toBe('a\u001b[31mb\u001b[39mc');
  expect(harmless('a\u001b[31mb', false)).toBe('a?[31mb');
  expect(harmless('\u001b]0;x\u0007\u009b2J\u001b[2J', true)).toBe('?]0;x??2J?[2J');
  expect(harmless('ø µ ½ ◌\n', true)).toBe('ø µ ½ ◌\n');
});

test('derived: wrapping loses no word', () => {
  const text = 'one two three four five six seven eight nine ten eleven twelve thirteen';
  for (const width of [20, 33, 80])
    expect(wrap(text, width, '  ', '    ').join(' ').split(/ +/).filter(Boolean).join(' ')).toBe(text);
});

test('derived: a name with blanks or quotation marks is one word for a shell', () => {
  expect(quoted('lathe.refit')).toBe('lathe.refit');
  expect(quoted('my lathe.refit')).toBe("'my lathe.refit'");
  expect(quoted("it's; rm *")).toBe("'it'\\''s; rm *'");
  expect(quoted('')).toBe("''");
});
