/** Where the pulses go: from the control through the drive to the encoder and back, each link with its limit. */

import { convert, formatNumber } from '../../quantity/index.ts';
import { worstFirst } from '../answer.ts';
import type { Finding } from '../finding.ts';
import { marginText } from '../say-margin.ts';
import { missingSentence } from '../words.ts';
import { type Ground, idsOf, numberOf, worst } from './ground.ts';
import type { FlowPicture, FlowStep } from './types.ts';

/** The checks along the way, in the order in which a pulse meets them. */
const WAY: readonly (readonly [check: string, at: string, name: string, unit: string])[] = [
  ['control-pulses', 'Control', 'pulse rate', 'kHz'],
  ['rounding', 'Control', 'rounding over the travel', 'mm'],
  ['pulse-width', 'Control', 'length of a pulse', 'µs'],
  ['direction-setup', 'Control', 'direction before the pulse', 'µs'],
  ['drive-pulses', 'Drive', 'pulse rate', 'kHz'],
  ['encoder-rate', 'Encoder', 'line rate', 'kHz'],
  ['drive-edges', 'Drive', 'count rate', 'kHz'],
  ['control-edges', 'Control', 'count rate', 'kHz'],
];

/** Pulses or counts for a millimetre, as the control holds them. */
function held(ground: Ground): string | undefined {
  const { results } = ground.worked('rounding');
  const exact = numberOf(ground.worked('rounding').inputs.get('cpm')!);
  const rounded = numberOf(results.get('cpm_held')!);
  if (exact === undefined || rounded === undefined) return undefined;
  const unit = ground.unit('1/mm');
  const per = unit === '1/mm' ? 'per mm' : 'per inch';
  const say = (value: number): string => formatNumber(convert(value, unit), 7);
  return Math.abs(rounded / exact - 1) < 1e-12
    ? `${say(exact)} ${per}, held exactly`
    : `${say(exact)} ${per}, held as ${say(rounded)}`;
}

function stepOf(ground: Ground, finding: Finding, [, at, name, unit]: (typeof WAY)[number]): FlowStep {
  const detail = finding.check === 'rounding' ? held(ground) : undefined;
  return {
    at,
    name,
    ...(detail === undefined ? {} : { detail }),
    asked: finding.asked?.value ?? null,
    there: finding.there?.value ?? null,
    unit: ground.unit(finding.asked?.unit ?? unit),
    margin: finding.margin ?? null,
    ...(finding.marginRange ? { range: finding.marginRange } : {}),
    verdict: finding.verdict,
    finding: finding.id,
  };
}

export function pulses(ground: Ground): FlowPicture | undefined {
  const findings: Finding[] = [];
  const steps: FlowStep[] = [];
  for (const step of WAY) {
    const finding = ground.finding(step[0]);
    if (!finding) continue;
    findings.push(finding);
    steps.push(stepOf(ground, finding, step));
  }
  if (steps.length === 0) return undefined;
  const missing = [...new Set(findings.flatMap((finding) => finding.missing))];
  const judged = worstFirst(findings.filter(({ margin }) => typeof margin === 'number'));
  return {
    kind: 'flow',
    id: 'pulses',
    title: 'Where the pulses go',
    question: 'Does every link keep up with the pulses?',
    says: sentence(findings, steps, judged[0], missing),
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(worstFirst(findings)),
    missing,
    steps,
  };
}

function sentence(
  findings: readonly Finding[],
  steps: readonly FlowStep[],
  nearest: Finding | undefined,
  missing: readonly string[],
): string {
  const unknown = missing.length > 0 ? ` ${missingSentence(missing)}` : '';
  const failing = findings.filter(({ verdict }) => verdict === 'fails');
  if (failing.length > 0) return `No. ${failing.map(({ sentence: says }) => says).join(' ')}${unknown}`;
  if (!nearest) return `Nobody can say yet.${unknown || ' Not enough is known.'}`;
  const step = steps.find(({ finding }) => finding === nearest.id)!;
  const times = marginText(nearest.margin as number);
  const all = missing.length > 0 ? 'What is known keeps up' : 'Yes, every link keeps up';
  return `${all}; nearest to its limit is the ${step.name} of the ${step.at.toLowerCase()}, with ${times} times what is asked.${unknown}`;
}
