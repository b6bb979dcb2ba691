import { describe, expect, test } from 'vitest';
import { readNamed, readSetting, readSettings, saySetting } from './read-setting.ts';
import { amount, choice, choiceOf, count, level, type SettingSpec, text } from './settings.ts';

const timeout: SettingSpec = {
  ...level('time-out', 's', '3 s', 0.01, 3600),
  instead: ['none', 'no', 'never'],
};
const SPECS = {
  speed: amount('highest speed', 'm/min', '6 m/min'),
  room: level('temperature of the room', '°C', '', 173),
  poles: count('poles', '3', 4, 1),
  lock: choiceOf('its lock', { spring: 'locks by its spring', current: 'locks by current' }),
  curve: choice('its letter', ['B', 'C']),
  route: text('route', '', 10),
  timeout,
};

const said = (spec: SettingSpec, typed: string): string => {
  const read = readSetting(spec, typed);
  return read.ok ? `read as ${read.value}` : read.problem.message;
};

describe('reading what was typed', () => {
  test('derived: SI inside, answers by their option or their words, words instead of a number by the first', () => {
    const { values, problems } = readSettings(SPECS, {
      speed: '12 m/min',
      room: '35 °C',
      lock: 'Locks by current',
      curve: 'c',
      timeout: 'Never',
      route: ' left ',
    });
    expect(problems).toEqual([]);
    expect(values.speed).toBeCloseTo(0.2, 12);
    expect(values.room).toBeCloseTo(308.15, 9);
    expect(values).toMatchObject({ lock: 'current', curve: 'C', timeout: 'none', route: 'left', poles: 3 });
  });

  test('derived: nothing typed is what follows from elsewhere, else what is usual, else not known', () => {
    expect(readSettings(SPECS, { speed: '  ' }).values).toMatchObject({ speed: 0.1, poles: 3, timeout: 3 });
    expect(readSettings(SPECS, {}).values.curve).toBeUndefined();
    expect(readSettings(SPECS, {}, { speed: '18 m/min' }).values.speed).toBeCloseTo(0.3, 12);
    expect(readSettings(SPECS, { speed: '12 m/min' }, { speed: '18 m/min' }).values.speed).toBeCloseTo(0.2);
  });

  test.each([
    [SPECS.speed, 'lots', /^Highest speed: .*such as 5 m\/min/],
    [SPECS.speed, '-1 m/min', /^Highest speed: it must be above zero, such as 6 m\/min\.$/],
    [SPECS.speed, '5 kg', /^Highest speed: /],
    [SPECS.speed, '1e30 m/min', /larger than anything in a machine/],
    [SPECS.room, '-200 °C', /^Temperature of the room: it must not be below -100\.?\d* °C, such as 5 °C\.$/],
    [SPECS.poles, '2.5', /^Poles: write a whole number from 1 to 4\.$/],
    [SPECS.lock, 'glue', /^Its lock: “glue” is none of its answers; write one of: spring; current\.$/],
    [SPECS.route, 'x'.repeat(11), /^Route: write at most 10 characters\.$/],
    [timeout, '0 s', /^Time-out: it must be from 0\.01 s to 3600 s, or none\.$/],
    [timeout, 'soon', /Or write none\.$/],
  ])('derived: %o refuses %s with its name and what would be right', (spec, typed, message) => {
    expect(said(spec, typed)).toMatch(message);
  });

  test('derived: a name that is not there is refused with the nearest; one bad setting leaves the rest', () => {
    const { values, problems } = readSettings(SPECS, { sped: '1 m/min', poles: 'lots', constructor: 'x' });
    expect(problems.map(({ where }) => where)).toEqual(['sped', 'constructor', 'poles']);
    expect(problems[0]!.message).toMatch(/Did you mean “speed”\?/);
    expect(values.poles).toBeUndefined();
    expect(values.speed).toBeCloseTo(0.1, 12);
    const named = readNamed(SPECS, '__proto__', '1');
    expect(named.ok ? '' : named.problem.where).toBe('__proto__');
  });

  test('derived: whatever is typed, it is a value or a sentence', () => {
    for (const spec of Object.values(SPECS))
      for (const typed of [
        'NaN',
        '1e400 s',
        '<b>2</b>',
        '\u0000',
        '\ud800',
        '½',
        'x'.repeat(10_000),
        '__proto__',
      ]) {
        const read = readSetting(spec, typed);
        if (read.ok) expect(typeof read.value === 'number' ? Number.isFinite(read.value) : true).toBe(true);
        else expect(read.problem.message.length).toBeLessThan(400);
      }
  });
});

test('derived: said back in its unit, an answer in its words, what is not known as nothing', () => {
  expect(saySetting(SPECS.speed, 0.2)).toBe('12 m/min');
  expect(saySetting(SPECS.lock, 'current')).toBe('locks by current');
  expect(saySetting(SPECS.curve, 'B')).toBe('B');
  expect(saySetting(timeout, 'none')).toBe('none');
  expect(saySetting(SPECS.poles, 4)).toBe('4');
  expect(saySetting(SPECS.speed, undefined)).toBe('');
});
