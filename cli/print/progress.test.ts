import { expect, test } from 'vitest';
import { progressOn } from './progress.ts';

test('derived: quick work says nothing; long work says every two seconds how far it is, on the error stream', () => {
  let now = 0;
  const said: string[] = [];
  const show = progressOn({ err: (text) => said.push(text) }, () => now);
  for (let done = 1; done <= 50; done++) {
    now += 100;
    show({ doing: 'every single fault', done, all: 50 });
  }
  show({ doing: 'every act in every state', done: 7, all: 0 });
  now += 2000;
  show({ doing: 'every act in every state', done: 9, all: 0 });
  expect(said).toEqual([
    'Trying every single fault: 20 of 50\n',
    'Trying every single fault: 40 of 50\n',
    'Trying every act in every state: 9\n',
  ]);
});
