/** Run in a process of its own by the tests of durability: `child <folder> hold | append <count>`. */
import { writeSync } from 'node:fs';
import type { Change, Fact } from '../engine/refit/index.ts';
import { newRefit } from '../engine/refit/index.ts';
import { openStore } from './index.ts';

const [folder = '', act = '', count = '0'] = process.argv.slice(2);
// Straight to the pipe: what is written is out, whatever becomes of this process.
const say = (line: string): number => writeSync(1, `${line}\n`);
const when = '2026-03-01T18:30:00Z';

const opened = openStore(folder);
if (!opened.ok) {
  say(`refused ${opened.problem.message}`);
} else if (act === 'hold') {
  say('open');
  setInterval(() => undefined, 1000);
} else {
  const store = opened.value;
  const part = { id: 'motor', kind: 'motor', name: 'Motor', facts: {} };
  const fresh = { ...newRefit({ id: 'test', name: 'Test', machine: 'lathe' }), parts: { motor: part } };
  const start = store.listRefits();
  if (start.ok && start.value.length === 0) store.createRefit(fresh, 'bench', when);
  const now = store.openRefit('test');
  if (!now.ok) throw new Error(now.problem.message);
  let { head } = now.value;
  let old: Fact | null = now.value.refit.parts.motor!.facts.resistance ?? null;
  say('ready');
  for (let done = 0; done < Number(count); done++) {
    const next: Fact = { value: { kind: 'quantity', text: `${head + 1} ohm` }, basis: 'measured' };
    const change: Change = { do: 'fact', part: 'motor', fact: 'resistance', old, new: next };
    const kept = store.appendEdit('test', { who: 'bench', when, basedOn: head, changes: [change] });
    if (!kept.ok) {
      say(`refused ${kept.problem.message}`);
      const still = store.openRefit('test');
      say(`still ${still.ok ? still.value.head : still.problem.message}`);
      break;
    }
    head = kept.value.edit.number;
    old = next;
    say(`kept ${head}`);
  }
  store.close();
  say('closed');
}
