/** What is said of devices, terminals, cables and wires on the command line: settings as PLACE=VALUE, and a terminal shown. */

import { supplyDrawn } from '../engine/advice/supply-drawn.ts';
import { assess } from '../engine/assess/index.ts';
import {
  type FieldLine,
  setBack,
  settingAt,
  specAt,
  state,
  type TerminalSheet,
  terminalSheet,
} from '../engine/circuit/whole/index.ts';
import { proposeWiring, readWiring } from '../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../engine/control/index.ts';
import { askBackOfSetting } from '../engine/quantity/read-setting.ts';
import { applyEdit } from '../engine/refit/edit.ts';
import type { Change, Refit, Wiring } from '../engine/refit/types.ts';
import { shown } from './arguments.ts';
import { refuseSlip } from './ask-back.ts';
import type { Page } from './print/page.ts';
import { need, Refusal } from './refusal.ts';

/** The changes that record 'K1.suppressor=diode' and the like; all stand or fall together. A slip is refused but `anyway`. */
export function stated(refit: Refit, words: readonly string[], anyway: boolean): readonly Change[] {
  let now = refit;
  // Of what is only proposed so far an answer may be recorded too.
  let proposed: Wiring | undefined;
  const changes: Change[] = [];
  for (const word of words) {
    const at = word.indexOf('=');
    if (at < 1)
      throw new Refusal(
        `“${shown(word)}” has no “=”; write each as K1.coil-volts='24 V', in quotation marks where there are spaces.`,
      );
    const name = word.slice(0, at).trim();
    const typed = word.slice(at + 1);
    const back = wholeTerminal(now, name, typed);
    const made = back ?? one(name, typed);
    now = need(applyEdit(now, { changes: [...made] }));
    changes.push(...made);
  }
  return changes;

  function one(name: string, typed: string): readonly Change[] {
    let of = now.wiring;
    let place = settingAt(name, of, readWiring(of, now));
    if (!place.ok) {
      proposed ??= proposeWiring(now, askedOfWiring(now), supplyDrawn(assess(now))).wiring;
      const later = settingAt(name, proposed, readWiring(proposed, now));
      if (later.ok) [place, of] = [later, proposed];
    }
    const there = need(place);
    const made = need(state(now, there, typed, of), `${shown(name)}: `);
    const spec = anyway ? undefined : specAt(there, of);
    if (spec) refuseSlip(shown(name), askBackOfSetting(spec, typed));
    return made;
  }
}

/** 'A1.out2=usual' takes back all that was said of a terminal. */
function wholeTerminal(refit: Refit, name: string, typed: string): readonly Change[] | undefined {
  const dot = name.indexOf('.');
  const [device, mark] = [name.slice(0, dot), name.slice(dot + 1)];
  if (dot < 1 || !terminalSheet(refit, device, mark)) return undefined;
  if (typed.trim().toLowerCase() !== 'usual')
    throw new Refusal(
      `${shown(name)} is a whole terminal: write ${name}=usual to take back what was said of it, or one of its settings, such as ${name}.kind=output.`,
    );
  return need(setBack(refit, device, mark));
}

/** A terminal of the refit by its name, 'A1.out2'. */
export function terminalOf(refit: Refit, name: string): TerminalSheet | undefined {
  const dot = name.indexOf('.');
  return dot < 1 ? undefined : terminalSheet(refit, name.slice(0, dot), name.slice(dot + 1));
}

export function printTerminal(page: Page, { id, name, words, fields, bonds, isStated }: TerminalSheet): void {
  page.prose(`${page.paint('bold', id)}: ${name && name !== words ? `${name}, ` : ''}${words}.`);
  const line = ({ setting, spec, value, from }: FieldLine) =>
    page.prose(
      `${setting}: ${spec.name}: ${value === '' ? 'not known' : `${value} (${from})`}`,
      '    ',
      '        ',
    );
  for (const each of fields) line(each);
  page.prose('How it belongs to its device:', '  ');
  for (const each of bonds) if (each.value !== '') line(each);
  if (isStated) page.prose(`Something was said of it; ${id}=usual takes that back.`);
}
