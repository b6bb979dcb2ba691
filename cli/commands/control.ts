/** `fettle control`: what the control must do, which candidates can, and every input and output. */
import { assess } from '../../engine/assess/index.ts';
import { censusCsv, compareControls, SIGNALS, type Signal } from '../../engine/control/index.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { writeOut } from '../output.ts';
import { printCandidates, printCensus, printNeeds } from '../print/control.ts';
import { pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { Refusal } from '../refusal.ts';

const WHY: Readonly<Record<Signal['by'], string>> = {
  refit: 'the machine has it',
  habit: 'usual',
  wiring: 'drawn in the wiring',
  wish: 'you asked for it',
};

export const control: Command = {
  name: 'control',
  summary: 'what the control must do, and which of the candidates can',
  usage: ['control FILE [--all] [--only CONTROL] [--census OUT.csv] [--ask] [--force] [--json]'],
  about:
    'The needs come from axes, drives, work wanted, auxiliaries and the stop circuit, each with why. Candidates are the options of the place “control” (fettle option FILE control NAME). What else you want, and what you can do without, stands with the job: fettle set FILE job.control-wanted probing; fettle set FILE job.control-waived networking. How many spares are wanted is the policy control-spares. The exit code is that of “check” for the chosen control, or the best candidate where none is chosen.',
  options: {
    all: { says: 'every row, also those that fit' },
    only: { takes: 'a control', says: 'this candidate alone, by its id or name' },
    census: { takes: 'OUT.csv', writes: true, says: 'write every input and output as CSV' },
    ask: { says: 'what to ask the seller, as text to copy' },
    force: { says: 'write over a file that is there' },
    json: { says: 'as JSON' },
  },
  examples: [
    'control lathe.refit',
    'control lathe.refit --only control-2 --ask',
    'control lathe.refit --census inputs-outputs.csv',
  ],
  words: [1, 1],
  run: ({ io, words, text, has }) => {
    const { refit, path } = openRefit(words[0]!);
    const report = compareControls(assess(refit));
    const page = pageOn(io);
    const only = text('only')?.trim().toLowerCase();
    const candidates = report.candidates.filter(
      ({ part }) => only === undefined || part.id.toLowerCase() === only || part.name.toLowerCase() === only,
    );
    if (only !== undefined && candidates.length === 0)
      throw new Refusal(
        `There is no control “${shown(only)}”; there are: ${report.candidates.map(({ part }) => part.id).join(', ') || 'none yet'}.`,
      );
    const out = text('census');
    if (out !== undefined) {
      const csv = censusCsv(report.needs.census, ({ sort, from, by }) => [
        SIGNALS[sort].way,
        SIGNALS[sort].name,
        from,
        WHY[by],
      ]);
      writeOut(io, out, csv, has('force'));
    }
    if (has('json'))
      io.out(
        `${JSON.stringify({ format: 'fettle-control', version: 1, needs: report.needs.needs, signals: report.signals, unsure: report.needs.unsure, candidates: candidates.map(({ part, ...each }) => ({ id: part.id, name: part.name, ...each })) }, null, 2)}\n`,
      );
    else if (has('ask')) {
      const asks = candidates.filter((each) => each.ask !== '');
      if (asks.length === 0) page.prose('There is nothing to ask.');
      asks.forEach(({ ask }, n) => {
        if (n > 0) page.line();
        for (const line of ask.split('\n')) page.prose(line, '', '   ');
      });
    } else {
      page.prose(page.paint('bold', `What the control of ${refit.name} must do`));
      printNeeds(page, report);
      printCensus(page, report);
      printCandidates(page, { ...report, candidates }, has('all'));
      if (out !== undefined) page.prose(`${shown(out)} now holds every input and output.`);
      if (!has('all')) {
        page.heading('What next');
        page.line(`    fettle control ${quoted(path)} --ask`);
      }
    }
    const of =
      candidates.find(({ chosen }) => chosen)?.verdict ?? bestOf(candidates.map(({ verdict }) => verdict));
    return of === 'fails' ? EXIT.fails : of === 'unknown' ? EXIT.unknown : EXIT.fine;
  },
};

const bestOf = (verdicts: readonly string[]): string =>
  ['fits', 'tight', 'unknown', 'fails'].find((each) => verdicts.includes(each)) ?? 'unknown';
