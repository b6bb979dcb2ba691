/** The document of one machine: its schema, its files and its edits. */
export { type Archive, readArchive, writeArchive } from './archive.ts';
export { conflictOf, conflictProblem } from './conflict.ts';
export { applyEdit, foldEdits, type UndoMeta, undoOf, unfoldEdits } from './edit.ts';
export { feedMarksEdit, hasOldFeedMarks } from './feed-marks.ts';
export { LIMITS } from './limits.ts';
export { newRefit } from './new.ts';
export { photoFault, photoKind } from './photo.ts';
export { type StrippedPhoto, stripPhoto } from './photo-strip.ts';
export {
  chosenPart,
  everyPlace,
  type FactPath,
  findFact,
  findPlace,
  pathOf,
  placeOf,
  refitNamer,
  resolvePath,
} from './place.ts';
export { parseEdit, parseRefit, parseState, readEdits, readRefit } from './read.ts';
export { BY_ID, type Namer, sayChange, sayChanges, sayFact } from './say.ts';
export { refitJsonSchema, whenSchema, whoSchema } from './schema.ts';
export { checkShape } from './shape.ts';
export { type Survey, surveyOf } from './survey.ts';
export { itemFound, keepFound, newKeepId, newTagId, partFound, tagFound } from './survey-set.ts';
export { tagsCsv } from './tags-csv.ts';
export type {
  Auxiliary,
  Chain,
  Change,
  Condition,
  ConflictProblem,
  Edit,
  Evidence,
  Fact,
  FactValue,
  Keep,
  Part,
  Place,
  Refit,
  StopCircuit,
  StopElement,
  StopMotion,
  StopWire,
  SurveyItem,
  Tag,
  Wiring,
  WiringCable,
  WiringDevice,
  WiringPin,
  WiringTerminal,
  WiringWire,
  Work,
} from './types.ts';
export { writeEdits, writeRefit } from './write.ts';
