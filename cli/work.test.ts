import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fixture, inFolder, run } from './run.fixture.ts';

const withFile = (act: (file: string) => Promise<void>): Promise<void> =>
  inFolder(async (folder) => {
    const file = join(folder, 'lathe.json');
    copyFileSync(fixture('unknown.json'), file);
    await act(file);
  });

const ADD = ['--add', 'thread', 'thread=M20x1.5', 'length=30mm', 'axis=X'];

test('work is added, listed, changed, shown and taken out, each as one edit', () =>
  withFile(async (file) => {
    expect((await run('work', file, ...ADD)).code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8')).work['thread-1'].settings).toEqual({
      thread: 'M20x1.5',
      length: '30mm',
      axis: 'X',
    });
    const listed = await run('work', file);
    expect(listed.out).toContain('thread-1');
    expect(listed.code).toBe(3);
    expect((await run('work', file, '--change', 'thread-1', 'length=', 'speed=300 r/min')).code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8')).work['thread-1'].settings).toEqual({
      thread: 'M20x1.5',
      axis: 'X',
      speed: '300 r/min',
    });
    const shown = await run('work', file, '--show', 'thread-1', '--json');
    const answer = JSON.parse(shown.out);
    expect(answer.format).toBe('fettle-work');
    expect(answer.work[0].findings.some(({ link }: { link: string }) => link === 'spindle')).toBe(true);
    expect((await run('work', file, '--remove', 'thread-1')).code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8')).work).toEqual({});
  }));

test('what the chart and the run in step cannot know they say', () =>
  withFile(async (file) => {
    await run('work', file, ...ADD);
    const inStep = await run('work', file, '--in-step', 'thread-1');
    expect(inStep.code).toBe(3);
    expect(inStep.out).toMatch(/spindle/);
    const chart = await run('work', file, '--chart');
    expect(chart.code === 0 || chart.code === 2).toBe(true);
  }));

test('a field far beyond what is usual is recorded only with --anyway', () =>
  withFile(async (file) => {
    const before = readFileSync(file, 'utf8');
    const line = ['--add', 'thread', 'thread=M20x1.5', 'axis=X', 'speed=25000 m/min'];
    const asked = await run('work', file, ...line);
    expect(asked.code).toBe(2);
    expect(asked.err.replace(/\s+/g, ' ')).toMatch(/usual for the speed, .* add --anyway\./);
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect((await run('work', file, ...line, '--anyway')).code).toBe(0);
    const mild = await run('work', file, '--change', 'thread-1', 'speed=1 r/min');
    expect(mild.code).toBe(0);
    expect(mild.out.replace(/\s+/g, ' ')).toContain('Is this right? Is the speed really 1 r/min?');
  }));

test.each([
  [['--add', 'sonnet', 'thread=M8'], /no kind of work/],
  [['--add', 'thred', 'thread=M8'], /Did you mean thread/],
  [['--add', 'thread'], /thread is missing/],
  [['--add', 'thread', 'M8'], /field=value/],
  [['--add', 'thread', 'thread=M8', 'thread=M9'], /given twice/],
  [['--add', 'thread', 'thread=M8', 'lenght=3mm'], /Did you mean length/],
  [['--add', 'cut', 'material=c45'], /operation is missing/],
  [['--show', 'thread-9'], /Nothing is wanted/],
  [['--remove', '__proto__'], /Nothing is wanted/],
  [['--add', 'thread', 'thread=M8', '--chart'], /do not go together/],
  [['thread=M8'], /belongs to nothing/],
  [['--add', 'thread', `thread=${'x'.repeat(5000)}`], /too long/],
  [['--add', 'thread', 'thread=M8', '--name', ' '], /a name has/],
] as const)('hostile line %#', ([...words], says) =>
  withFile(async (file) => {
    const before = readFileSync(file, 'utf8');
    const answer = await run('work', file, ...words);
    expect(answer.code).toBe(2);
    expect(answer.err).toMatch(says);
    expect(readFileSync(file, 'utf8')).toBe(before);
  }),
);
