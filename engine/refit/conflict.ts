/** An edit that meets something else than its author saw: what is there now, in words. */
import { own } from '../quantity/own.ts';
import type { Problem } from '../quantity/types.ts';
import { brief } from './brief.ts';
import { BY_ID, type Namer, sayFact, sayPlaceNow } from './say.ts';
import { sayStopNow } from './say-stop.ts';
import { type SurveyChange, sayRecord, surveySubject } from './say-survey.ts';
import { sayThing as sayWired, type WiringChange, wiringSubject } from './say-wiring.ts';
import type { Change, ConflictProblem, Refit } from './types.ts';

/** The refusal of `change`, whose author did not see what stands in `refit` now. */
export function conflictProblem(refit: Refit, change: Change, namer: Namer = BY_ID): ConflictProblem {
  const subject = subjectOf(change, namer);
  const now = sayNow(refit, change, namer);
  return {
    code: 'out-of-domain',
    message: `${subject} is now ${now}, which is not what this edit was made from; look at it and make the edit again.`,
    where: subject,
    conflict: { now, change },
  };
}

/** The conflict in a refusal, where that is what it was. */
export const conflictOf = (problem: Problem): ConflictProblem['conflict'] | undefined =>
  'conflict' in problem ? (problem as ConflictProblem).conflict : undefined;

function subjectOf(change: Change, namer: Namer): string {
  switch (change.do) {
    case 'fact':
      return `${namer.part(change.part)}: ${namer.fact(change.part, change.fact)}`;
    case 'part':
      return namer.part(change.id);
    case 'place':
      return namer.place(change.chain, change.place);
    case 'chain':
      return `${(change.new ?? change.old)?.kind ?? 'axis'} ${change.id}`;
    case 'policy':
      return namer.policy(change.policy);
    case 'evidence':
    case 'tag':
    case 'keep':
    case 'survey':
      return surveySubject(change, namer);
    case 'stop':
      return 'stop circuit';
    case 'work':
    case 'auxiliary':
    case 'device':
    case 'wire':
    case 'cable':
      return wiringSubject(change);
    case 'wiring-setting':
      return `wiring, ${change.setting}`;
    case 'machine':
      return 'kind of machine';
    case 'title':
      return 'name and description';
  }
}

/** What stands now where `change` would put something. */
function sayNow(refit: Refit, change: Change, namer: Namer): string {
  switch (change.do) {
    case 'fact': {
      const facts = own(refit.parts, change.part)?.facts ?? {};
      return sayFact(own(facts, change.fact) ?? null);
    }
    case 'part': {
      const part = own(refit.parts, change.id);
      return part ? `'${part.name}' with ${Object.keys(part.facts).length} facts` : 'not there';
    }
    case 'place': {
      const chain = refit.chains.find(({ id }) => id === change.chain);
      return sayPlaceNow(own(chain ? chain.places : refit.places, change.place) ?? null, namer);
    }
    case 'chain': {
      const chain = refit.chains.find(({ id }) => id === change.id);
      return chain ? `there with ${Object.keys(chain.places).length} places` : 'not there';
    }
    case 'policy':
      return brief(own(refit.policies, change.policy) ?? 'at its usual value');
    case 'evidence':
      return sayThing(change.do, own(refit.evidence, change.id));
    case 'tag':
      return sayThing(change.do, own(refit.tags, change.id));
    case 'keep':
      return sayThing(change.do, own(refit.keeps, change.id));
    case 'survey':
      return sayThing(change.do, own(refit.survey, change.id));
    case 'stop':
      return sayStopNow(refit.stop);
    case 'work':
      return sayWiredThing(change.do, own(refit.work, change.id));
    case 'auxiliary':
      return sayWiredThing(change.do, own(refit.auxiliaries, change.id));
    case 'device':
      return sayWiredThing(change.do, own(refit.wiring.devices, change.id));
    case 'wire':
      return sayWiredThing(change.do, own(refit.wiring.wires, change.id));
    case 'cable':
      return sayWiredThing(change.do, own(refit.wiring.cables, change.id));
    case 'wiring-setting':
      return brief(own(refit.wiring.settings, change.setting) ?? 'not there');
    case 'machine':
      return refit.machine;
    case 'title':
      return `'${refit.name}', '${brief(refit.about)}'`;
  }
}

const sayThing = (kind: SurveyChange['do'], thing: NonNullable<SurveyChange['new']> | undefined): string =>
  thing ? sayRecord(kind, thing) : 'not there';

const sayWiredThing = (
  kind: WiringChange['do'],
  thing: NonNullable<WiringChange['new']> | undefined,
): string => (thing ? sayWired(kind, thing) : 'not there');
