/** The survey as JSON for scripts; docs/command-line.md describes it. */
import type { Survey } from '../../engine/refit/survey.ts';
import type { Refit } from '../../engine/refit/types.ts';

export function surveyJson({ id, name }: Refit, { parts, items, keeps, tags, shares }: Survey) {
  return {
    format: 'fettle-survey',
    version: 1,
    refit: { id, name },
    shares,
    parts: parts.map(({ at, part, looked }) => ({
      at,
      part: part.id,
      condition: part.condition ?? null,
      looked,
      notes: part.notes ?? '',
      photos: part.photos ?? [],
    })),
    items: items.map(({ spec, found, looked }) => ({
      id: spec.id,
      name: spec.name,
      state: found?.state ?? null,
      looked,
      note: found?.note ?? '',
      answers: found?.answers ?? {},
      photos: found?.photos ?? [],
    })),
    keeps: keeps.map(({ id: keep, what, keep: found, done }) => ({
      id: keep,
      what,
      state: found?.state ?? 'to-do',
      done,
      note: found?.note ?? '',
      photos: found?.photos ?? [],
    })),
    tags,
  };
}
