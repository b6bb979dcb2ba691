/** What single faults come to. */
import type { Looked, StopFinding } from './findings.ts';

export function faultFinding({ faults }: Looked): StopFinding {
  const dangerous = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude);
  const excluded = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && fault.mayExclude);
  return {
    id: 'faults',
    title: 'Does it still stop with any one fault?',
    verdict: dangerous.length > 0 ? 'fails' : 'fits',
    sentence:
      dangerous.length > 0
        ? `${dangerous.length} of ${faults.length} single faults ${dangerous.length === 1 ? 'is' : 'are'} dangerous. ${dangerous[0]!.says}`
        : `None of ${faults.length - excluded.length} single faults that were tried keeps it from stopping.${excluded.length > 0 ? ` ${excluded.length} more rest on the devices: ${excluded.map(({ fault }) => fault.id).join(', ')}.` : ''}`,
    ...(dangerous[0] ? { remedy: dangerous[0].catches } : {}),
  };
}

export function unnoticedFinding({ faults }: Looked): StopFinding {
  const unnoticed = faults.filter(({ judged }) => judged.verdict === 'unnoticed');
  return {
    id: 'unnoticed',
    title: 'Is a fault noticed before the next start?',
    verdict: unnoticed.length > 0 ? 'tight' : 'fits',
    sentence:
      unnoticed.length > 0
        ? `${unnoticed.length} single faults are not noticed. ${unnoticed[0]!.says}`
        : 'Every single fault that was tried keeps it from starting again after some stop.',
    ...(unnoticed[0] ? { remedy: unnoticed[0].catches } : {}),
  };
}
