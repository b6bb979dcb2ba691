/** Nothing that stands in a sample, and nothing that is usual, may be asked back; and every span is one that can be read. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { askBackOfPolicy } from '../engine/assess/set-policy.ts';
import { POLICIES } from '../engine/checks/policies.ts';
import { POWER_SETTINGS } from '../engine/circuit/power/index.ts';
import { MOTION_SETTINGS } from '../engine/circuit/stop/motion.ts';
import { specAt, terminalSettings } from '../engine/circuit/whole/index.ts';
import {
  type AnswerPlace,
  CABLE_SETTINGS,
  NATURES,
  WIRE_SETTINGS,
  WIRING_KINDS,
} from '../engine/circuit/wiring/index.ts';
import { kindOf } from '../engine/control/index.ts';
import { PARTS } from '../engine/parts/index.ts';
import { SURVEY_ITEMS } from '../engine/parts/survey/index.ts';
import { parseQuantity } from '../engine/quantity/index.ts';
import { own } from '../engine/quantity/own.ts';
import { askBackOfSetting } from '../engine/quantity/read-setting.ts';
import type { SettingSpecs } from '../engine/quantity/settings.ts';
import { readRefit } from '../engine/refit/index.ts';
import { askBackOfAnswer } from '../engine/refit/read-answer.ts';
import { askBackOfText } from '../engine/refit/read-fact.ts';
import { SAMPLES } from './index.ts';

const TABLES: readonly (readonly [string, SettingSpecs])[] = [
  ...Object.values(WIRING_KINDS).map(({ id, settings }) => [id, settings] as const),
  ...Object.keys(NATURES).map((kind) => [kind, terminalSettings(kind)] as const),
  ['wire', WIRE_SETTINGS],
  ['cable', CABLE_SETTINGS],
  ['supply', POWER_SETTINGS],
  ['axis', MOTION_SETTINGS.axis],
  ['spindle', MOTION_SETTINGS.spindle],
];

test('derived: every span of a setting and of a question of the survey is read, its low end first, and holds what is usual', () => {
  const spans = [
    ...TABLES.flatMap(([of, specs]) =>
      Object.entries(specs).flatMap(([name, spec]) =>
        spec.kind === 'quantity' && spec.plausible ? [{ ...spec, at: `${of}.${name}` }] : [],
      ),
    ),
    ...SURVEY_ITEMS.flatMap(({ id, questions }) =>
      Object.entries(questions).flatMap(([name, spec]) =>
        spec.kind === 'quantity' ? [{ ...spec, usual: '', at: `${id}.${name}` }] : [],
      ),
    ),
  ];
  expect(spans.length).toBeGreaterThan(80);
  for (const { at, unit, plausible, usual } of spans) {
    expect(plausible, at).toBeDefined();
    const [low, high] = plausible!.map((text) => parseQuantity(text, unit));
    if (!low?.ok || !high?.ok) throw new Error(`${at}: ${plausible}`);
    expect(low.value.value, at).toBeLessThan(high.value.value);
    const one = usual === '' ? low : parseQuantity(usual, unit);
    if (!one.ok) throw new Error(`${at}: ${usual}`);
    expect(one.value.value, at).toBeGreaterThanOrEqual(low.value.value);
    expect(one.value.value, at).toBeLessThanOrEqual(high.value.value);
  }
});

test('derived: what is usual of a setting or a policy is never asked back', () => {
  for (const [of, specs] of TABLES)
    for (const [name, spec] of Object.entries(specs))
      expect(askBackOfSetting(spec, spec.usual), `${of}.${name}`).toBeUndefined();
  for (const { id, usual } of POLICIES) expect(askBackOfPolicy(id, usual), id).toBeUndefined();
});

test.each(SAMPLES)('derived: $file: nothing in it is asked back', ({ file }) => {
  const read = readRefit(readFileSync(join(import.meta.dirname, file), 'utf8'), Object.keys(PARTS));
  if (!read.ok) throw new Error(read.problem.message);
  const refit = read.value;
  const asked: string[] = [];
  let count = 0;
  const take = (at: string, question: string | undefined): void => {
    count++;
    if (question !== undefined) asked.push(`${at}: ${question}`);
  };
  for (const part of Object.values(refit.parts))
    for (const [fact, { value }] of Object.entries(part.facts)) {
      const spec = own(PARTS[part.kind]!.facts, fact);
      if (spec && value.kind === 'quantity') take(`${part.id}.${fact}`, askBackOfText(spec, value.text));
    }
  for (const [id, text] of Object.entries(refit.policies)) take(id, askBackOfPolicy(id, text));
  for (const spec of SURVEY_ITEMS)
    for (const [id, text] of Object.entries(refit.survey[spec.id]?.answers ?? {}))
      take(`${spec.id}.${id}`, askBackOfAnswer(spec, id, text));
  for (const { id, kind, settings } of Object.values(refit.auxiliaries))
    for (const [name, text] of Object.entries(settings))
      take(`${id}.${name}`, askBackOfSetting(kindOf(kind)!.settings[name]!, text));
  const { wiring } = refit;
  const setting = (place: AnswerPlace, text: string): void => {
    const spec = specAt(place, wiring);
    if (spec) take(JSON.stringify(place), askBackOfSetting(spec, text));
  };
  for (const [name, text] of Object.entries(wiring.settings)) setting({ of: 'wiring', setting: name }, text);
  const things = [
    ...Object.values(wiring.devices).map((each) => ({ of: 'device' as const, ...each })),
    ...Object.values(wiring.cables).map((each) => ({ of: 'cable' as const, ...each })),
    ...Object.values(wiring.wires).map((each) => ({ of: 'wire' as const, ...each })),
  ];
  for (const { of, id, settings } of things)
    for (const [name, text] of Object.entries(settings)) setting({ of, id, setting: name }, text);
  for (const { kind, settings } of Object.values(refit.stop?.motions ?? {}))
    for (const [name, text] of Object.entries(settings)) {
      const spec = own(MOTION_SETTINGS[kind], name);
      if (spec) take(name, askBackOfSetting(spec, text));
    }
  expect(count).toBeGreaterThan(150);
  expect(asked).toEqual([]);
});
