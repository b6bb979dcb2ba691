/** `fettle wire`: joins two terminals, cuts a wire, says what a device or a terminal is; and what that does. */

import { supplyDrawn } from '../../engine/advice/supply-drawn.ts';
import { assess } from '../../engine/assess/index.ts';
import { lookThrough } from '../../engine/circuit/whole/index.ts';
import { readSetting, WIRE_SETTINGS, type WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { askBackOfSetting } from '../../engine/quantity/read-setting.ts';
import type { Change, Refit, WiringWire } from '../../engine/refit/types.ts';
import { shown } from '../arguments.ts';
import { ANYWAY, refuseSlip } from '../ask-back.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { changed, openRefit } from '../files.ts';
import { pageOn } from '../print/page.ts';
import { printWiringFindings } from '../print/wiring.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';
import { printTerminal, stated, terminalOf } from '../wire-state.ts';

const SETTINGS = [...Object.keys(WIRE_SETTINGS), 'cable'];

export const wire: Command = {
  name: 'wire',
  summary: 'joins two terminals, cuts a wire, says what a device or a terminal is',
  usage: [
    'wire FILE FROM TO [number=12] [colour=blue] [section=0.75mm²] [length=2m] [ferrule=TEXT] [cable=W2] [--try] [--anyway]',
    'wire FILE --cut WIRE',
    'wire FILE PLACE=VALUE … [--try] [--anyway]',
    'wire FILE TERMINAL',
  ],
  about:
    'FROM and TO are terminals such as K1.A1. What is said anew of the wiring is shown; --try shows it and records nothing. A wire is cut by its id, which --list wires of “fettle wiring” shows where it has no number. PLACE is a setting of a device (K1.coil-volts), of a cable or a wire (W2.length), of the whole (wiring.homes), or of one terminal as it really is (A1.out2.high); “usual” takes it back, and A1.out2=usual all that was said of that terminal. A terminal alone shows what it is taken for and from where.',
  options: {
    cut: { takes: 'a wire', says: 'take this wire out' },
    try: { says: 'only show what would happen' },
    ...ANYWAY,
  },
  examples: [
    'wire lathe.refit A1.x-step T1.x-step --try',
    'wire lathe.refit --cut w12',
    "wire lathe.refit K1.suppressor=diode A1.out2.high='5 V'",
    'wire lathe.refit A1.out2',
  ],
  words: [1],
  run: ({ io, words, text, has }) => {
    const [path, from, to, ...rest] = words as [string, string?, string?, ...string[]];
    const file = openRefit(path);
    const cut = text('cut');
    if (cut !== undefined && from !== undefined)
      throw new Refusal('Cut a wire or join two terminals, one at a time.');
    if (cut === undefined && from !== undefined && to === undefined && !from.includes('=')) {
      const terminal = terminalOf(file.refit, from);
      if (terminal) {
        printTerminal(pageOn(io), terminal);
        return EXIT.fine;
      }
    }
    const changes =
      cut !== undefined
        ? [severed(file.refit, cut)]
        : from?.includes('=')
          ? stated(file.refit, words.slice(1), has('anyway'))
          : [joined(file.refit, from, to, rest, has('anyway'))];
    const drawn = supplyDrawn(assess(file.refit));
    const before = lookThrough(file.refit, drawn);
    const after = lookThrough(changed(file, changes, io).refit, drawn);
    if (has('try')) pageOn(io).prose('Nothing is recorded.');
    else record(io, file, changes);
    const fresh = news(before.findings, after.findings);
    const page = pageOn(io);
    page.heading(fresh.length === 0 ? 'Nothing else is said of the wiring than before' : 'What is said anew');
    printWiringFindings(page, fresh, after.read, after.resting);
    return fresh.some(({ verdict }) => verdict === 'fails')
      ? EXIT.fails
      : fresh.some(({ verdict }) => verdict === 'unknown')
        ? EXIT.unknown
        : EXIT.fine;
  },
};

function news(before: readonly WiringFinding[], after: readonly WiringFinding[]): readonly WiringFinding[] {
  const said = new Set(before.map((each) => JSON.stringify(each)));
  return after.filter((each) => !said.has(JSON.stringify(each)));
}

function severed({ wiring }: Refit, typed: string): Change {
  const name = typed.trim();
  const own = Object.hasOwn(wiring.wires, name)
    ? [wiring.wires[name]!]
    : Object.values(wiring.wires).filter(({ settings }) => settings.number === name && name !== '');
  const [found, another] = own;
  if (!found) {
    const near = nearest(shown(name), Object.keys(wiring.wires));
    throw new Refusal(`There is no wire “${shown(name)}”.${near ? ` Did you mean ${near}?` : ''}`);
  }
  if (another)
    throw new Refusal(
      `Several wires bear the number ${shown(name)}: ${own
        .map(({ id }) => id)
        .slice(0, 6)
        .join(', ')}. Cut one by its id.`,
    );
  return { do: 'wire', id: found.id, old: found, new: null };
}

function joined(
  refit: Refit,
  from: string | undefined,
  to: string | undefined,
  rest: readonly string[],
  anyway: boolean,
): Change {
  if (from === undefined || to === undefined)
    throw new Refusal(
      'A wire needs two terminals, such as K1.A1 and X1.4. “fettle help wire” shows how it is used.',
    );
  const { terminals } = lookThrough(refit).read;
  for (const each of [from, to])
    if (!terminals.has(each)) {
      const near = nearest(shown(each), [...terminals.keys()]);
      throw new Refusal(`There is no terminal “${shown(each)}”.${near ? ` Did you mean ${near}?` : ''}`);
    }
  if (from === to) throw new Refusal('A wire needs two different terminals.');
  const settings: Record<string, string> = {};
  let cable: string | null = null;
  for (const word of rest) {
    const at = word.indexOf('=');
    const name = word.slice(0, Math.max(at, 0));
    const value = word.slice(at + 1).trim();
    if (!SETTINGS.includes(name))
      throw new Refusal(
        `“${shown(word)}” is not understood; write ${SETTINGS.map((each) => `${each}=…`).join(', ')}.`,
      );
    if (name === 'cable') {
      if (!Object.hasOwn(refit.wiring.cables, value))
        throw new Refusal(`There is no cable “${shown(value)}”.`);
      cable = value;
    } else {
      need(readSetting(WIRE_SETTINGS[name]!, value));
      if (!anyway) refuseSlip(name, askBackOfSetting(WIRE_SETTINGS[name]!, value));
      settings[name] = value;
    }
  }
  let number = 1;
  while (Object.hasOwn(refit.wiring.wires, `w${number}`)) number++;
  const wireMade: WiringWire = { id: `w${number}`, from, to, cable, settings };
  return { do: 'wire', id: wireMade.id, old: null, new: wireMade };
}
