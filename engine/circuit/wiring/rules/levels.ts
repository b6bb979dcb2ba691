/** Whether an input reads what the output joined to it says: kind of output, level on and off, current, series resistor. */
import { WORST_FIRST } from '../../../quantity/verdict.ts';
import { type End, type Met, meet } from '../check/across.ts';
import { drivesOf } from '../check/drive.ts';
import { found, type Rule } from '../check/rule.ts';
import { terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Input, Terminal, WiringFinding } from '../types.ts';
import { LEVELS } from './levels-head.ts';
import { judgeLevels } from './levels-judged.ts';
import { floats, noPullUp, sameWay } from './levels-wrong.ts';

export const levels: Rule = {
  ...LEVELS,
  of: ['input'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const input = terminal.nature as Input;
    if (input.leg === 'minus') return [];
    if (view.wiresAt(id).length === 0) {
      const other = terminal.with;
      if (input.leg !== 'plus' || other === null || view.wiresAt(other).length === 0) return [];
      return [
        found(
          LEVELS,
          [id, other],
          'fails',
          `Only ${other} is connected; ${terminalName(view, id)} hangs in the air, so no current can flow.`,
          {
            remedy: `Connect ${id}.`,
          },
        ),
      ];
    }
    const ends = endsOf(view, terminal, input);
    if ('finding' in ends) return [ends.finding];
    const all = meet(ends.plus, ends.minus, input.pull, input.form === 'logic').map((met) =>
      judgeMet(view, terminal, input, met),
    );
    // Several outputs may work on one input: the worst of them counts.
    return all.length === 0 ? [] : [all.reduce((worst, each) => (rank(each) < rank(worst) ? each : worst))];
  },
};

const rank = ({ verdict, margin = 0 }: WiringFinding): number => WORST_FIRST.indexOf(verdict) * 1e7 + margin;

function endsOf(
  view: View,
  terminal: Terminal,
  input: Input,
): { readonly plus: End; readonly minus: End } | { readonly finding: WiringFinding } {
  const at = (id: string): End => ({ drives: drivesOf(view, id), rail: view.rail(id) });
  const other = input.leg === 'plus' ? terminal.with : terminal.common;
  if (other === null)
    return {
      finding: found(
        LEVELS,
        [terminal.id],
        'unknown',
        `It is not written what ${terminalName(view, terminal.id)} is measured against.`,
        {
          needs: [`${terminal.id}.common`],
        },
      ),
    };
  const [own, far] = [at(terminal.id), at(other)];
  switch (input.form) {
    case 'sourcing':
      return { plus: far, minus: own };
    case 'opto': {
      if (input.leg === 'plus') return { plus: own, minus: far };
      const common = far.drives.find(({ how, ohms: through }) => how === 'fixed' && through === 0);
      if (!common)
        return {
          finding: found(
            LEVELS,
            [terminal.id, other],
            'fails',
            `${terminalName(view, terminal.id)} works between itself and ${terminalName(view, other)}, and that common is not connected to a supply: no current can flow.`,
            {
              remedy: `Join ${other} to 0 V for sensors that give plus (PNP), or to +24 V for sensors that pull to minus (NPN).`,
            },
          ),
        };
      return (common.high ?? 0) > 0 ? { plus: far, minus: own } : { plus: own, minus: far };
    }
    default:
      return { plus: own, minus: far };
  }
}

function judgeMet(view: View, terminal: Terminal, input: Input, met: Met): WiringFinding {
  const { id } = terminal;
  const name = terminalName(view, id);
  const source = (drive: { readonly path: { readonly source: string } }) => drive.path.source;
  switch (met.kind) {
    case 'open':
      return found(
        LEVELS,
        [id],
        'fails',
        `${name} is connected, but ${met.end === 'both' ? 'nothing drives either end of it' : met.end === 'plus' ? 'nothing gives it a voltage' : 'nothing takes its current back'}: what it reads is chance.`,
        {
          part: 'open',
          remedy:
            met.end === 'minus'
              ? 'Connect its other end, or its common, to 0 V.'
              : 'Connect the output that is meant to drive it.',
        },
      );
    case 'foreign':
      return found(
        LEVELS,
        [id, source(met.by)],
        'fails',
        `${name} is joined to ${terminalName(view, source(met.by))}, which is no digital signal${met.by.how === 'ac' ? ' but an a.c. voltage that destroys it' : ''}.`,
        {
          remedy: 'Take that wire off.',
        },
      );
    case 'no-common':
      return found(
        LEVELS,
        [id, source(met.by), source(met.other)],
        'fails',
        `${source(met.by) || name} and ${source(met.other)} have no common: nothing joins what their voltages count against, so no current finds its way back.`,
        { remedy: 'Join the 0 V of both, once.' },
      );
    case 'no-pull-up':
      return noPullUp(view, terminal, input, source(met.by));
    case 'same-way':
      return sameWay(view, terminal, input, source(met.by));
    case 'met': {
      const loose = floats(view, terminal, input, met);
      if (loose) return loose;
      if (
        met.by.how === 'sinking' &&
        met.by.withstands !== undefined &&
        (met.across.top ?? 0) > met.by.withstands
      )
        return found(
          LEVELS,
          [id, source(met.by)],
          'fails',
          `While ${terminalName(view, source(met.by))} is off, ${volts(met.across.top!)} lie on it through ${name}, and it stands ${volts(met.by.withstands)}.`,
          {
            margin: met.by.withstands / met.across.top!,
            source: 'maximum rating of the output',
            remedy: 'Feed the input from a lower voltage, or put an opto board between them.',
          },
        );
      return judgeLevels(view, terminal, input, met);
    }
  }
}
