/**
 * Shadeside's model: where on a building an electronics enclosure stays cool.
 *
 * Conventions. SI inside, degC for temperatures, units in names. Azimuth: degrees clockwise from TRUE north; a wall's
 * azimuth is the direction it faces. Instants are UTC `Date`s; a day is the local civil day of the place's IANA zone.
 * Left and right of a box: as seen by a person who faces the wall. Heat flows into the box are positive.
 * Everything is pure: no I/O, no clock.
 */

export { outlineEdges, type PlanPoint } from './building-outline.ts';
export { capital, lowered } from './capital.ts';
export { CAUTIONS, WORK_CAUTIONS, type WorkCaution, type WorkPart } from './cautions.ts';
export { clockReader, clockTime } from './civil-day.ts';
export {
  type AssumedClimate,
  assumedClimate,
  distanceKm,
  LAPSE_K_PER_M,
  type LocatedDay,
  lapsed,
} from './climate/climate-by-location.ts';
export type { Weather } from './climate/design-climate.ts';
export {
  FULL_SUN_K,
  HEAT_CLASS_FROM_C,
  HEAT_CLASSES,
  HEAT_INDEX_CHART,
  type HeatClass,
  heatClass,
  heatIndex,
} from './climate/heat-index.ts';
export { CLIMATE_SAMPLES, STANDARD_CYCLES } from './climate/samples.ts';
export { skyLongwave } from './climate/sky-temperature.ts';
export { type SyntheticOptions, syntheticYear } from './climate/synthetic-year.ts';
export { designDayOfYear } from './climate/weather/design-day-of-year.ts';
export { readWeather, readWeatherLines } from './climate/weather/read-weather.ts';
export type { TimeBase } from './climate/weather/time-base.ts';
export { WeatherFileError, type WeatherProblem } from './climate/weather/weather-file-error.ts';
export type { WeatherHour, WeatherYear } from './climate/weather/weather-year.ts';
export { writeEpw } from './climate/weather/write-epw.ts';
export { bearingTenths, compassPoint, wrapDegrees } from './compass.ts';
export { CONSTRUCTION_NAMES, CONSTRUCTIONS } from './constructions.ts';
export { DEMO_SITE } from './demo-site.ts';
export { DUTIES, DUTY_NAMES } from './duty.ts';
export { parsePlainSite, siteJsonSchema } from './entry.ts';
export { parseSite } from './entry-with-units.ts';
export { FACES, type Face, MOUNTS, type PerFace } from './faces.ts';
export { FIELDS, type FieldPath, fieldAt, type NumberField } from './fields.ts';
export { FINISH_NAMES, FINISH_STATES, FINISHES } from './finishes.ts';
export type { Answer, Figure, LabelledDay, Target } from './lesson/answer.ts';
export { answerQuestion } from './lesson/answer-question.ts';
export { type AskedQuestion, askQuestion, type Choice, type GuessForm, placedSite } from './lesson/ask.ts';
export { type BothUnits, kelvinsBeside, temperatureBeside } from './lesson/both-units.ts';
export { compareBoxes, type LessonOptions } from './lesson/compare.ts';
export type { BoxDay, Comparison } from './lesson/comparison.ts';
export { batteryYearsText, type DayAgeing } from './lesson/day-ageing.ts';
export {
  CLIMATE_NAMES,
  DIFFERENCE_KINDS,
  type Difference,
  type DifferenceInput,
  type DifferenceKind,
} from './lesson/difference.ts';
export { differenceChoices } from './lesson/difference-choices.ts';
export { climateTitle, DIFFERENCE_LABELS, doneWords } from './lesson/difference-words.ts';
export { lessonJsonSchema, parsePlainLesson } from './lesson/entry.ts';
export { parseLesson } from './lesson/entry-with-units.ts';
export { type Explained, explain, explainable } from './lesson/explain/explain.ts';
export { explainAgeingFactor, explainPeakDifference } from './lesson/explain/explain-ageing.ts';
export type { ExplainedSymbol, Explanation } from './lesson/explain/explanation.ts';
export type { MathNode } from './lesson/explain/formula.ts';
export { checkGuess, type Feedback, type Verdict } from './lesson/feedback.ts';
export {
  comparisonRows,
  type Exercise,
  type Handout,
  type HandoutOptions,
  type HandoutPage,
  type HandoutRow,
  lessonHandout,
  type Solution,
} from './lesson/handout.ts';
export type { Lesson, LessonComparison, LessonInput } from './lesson/lesson-file.ts';
export { LESSON_FILES, LESSON_NAMES, shippedLesson } from './lesson/lessons.ts';
export { type LessonQuestion, QUESTION_KINDS, type QuestionKind } from './lesson/question.ts';
export type { Statement } from './lesson/rule.ts';
export {
  LIMIT_REFERENCES,
  type Site,
  type SiteInput,
  TOUCH_MATERIALS,
  USUAL_HOOD_FACES,
  USUAL_LEAF_MONTHS,
  type Wall,
} from './site.ts';
export { type Problem, SiteError, shown } from './site-error.ts';
export { siteFileName } from './site-file-name.ts';
export { holdsSite, SITE_LINK_START, SiteLinkError, siteLinkFragment, siteOfLink } from './site-link.ts';
export { dayAssumptions } from './siting/assumptions.ts';
export { bearingRose, ROSE_STEP_DEG, type RosePoint } from './siting/bearing-rose.ts';
export { type ColdResult, type ColdState, evaluateColdNight } from './siting/cold-night.ts';
export { type ComparedYear, compareYears, versusBest, type YearComparison } from './siting/compare-years.ts';
export {
  type ChoiceConfidence,
  type ConfidenceOptions,
  choiceConfidence,
  type InputWeight,
  type WallConfidence,
  wallConfidence,
} from './siting/confidence.ts';
export {
  type DecidingFigure,
  decidingFigure,
  type FigureBesideInside,
  figureBesideInside,
  figureOf,
} from './siting/deciding-figure.ts';
export { evaluateDay } from './siting/evaluate-day.ts';
export { evaluateYear, type YearOptions } from './siting/evaluate-year.ts';
export { KIT_CLASSES, type KitClass, type KitName, WIDE_RANGE_K } from './siting/kit-classes.ts';
export { LEDGER_WORDS } from './siting/ledger-words.ts';
export { type WorstMonth, worstMonth } from './siting/other-months.ts';
export { type BorderWay, type HeatWay, type PlayedDay, type PlayOptions, playDay } from './siting/played-day.ts';
export { type RankedDays, rankedDays, rankWalls } from './siting/rank-walls.ts';
export { type Remedy, type RemedyList, type RemedyOptions, remediesFor, remedySteps } from './siting/remedies.ts';
export type { Effort } from './siting/remedy-changes.ts';
export {
  type Assumption,
  coldDecides,
  type DayOptions,
  type DayResult,
  type DaySummary,
  decidingMarginK,
  type Finding,
  type FindingStatus,
  LEDGER_PATHS,
  type Ledger,
  type LedgerPath,
  type RankedWall,
  type Ranking,
  type RankOptions,
} from './siting/results.ts';
export { type ScreenedSite, type ScreenedWall, type SufficientRemedy, screenSite } from './siting/screen-site.ts';
export { cautionsAt, cautionsOfTheDay, type SiteCaution, type SiteCautions } from './siting/site-cautions.ts';
export { type PlanMark, type SitePlan, sitePlan } from './siting/site-plan.ts';
export { type SheetOptions, type SheetWall, type SiteSheet, siteSheet } from './siting/site-sheet.ts';
export { parseSitingRules, type SitingCheck, type SitingRules, USUAL_SITING_RULES } from './siting/siting-rules.ts';
export {
  bearingNear,
  type LitDegree,
  litDegree,
  type PathRun,
  pathRuns,
  type SkyChart,
  silhouetteAreas,
  skyChart,
} from './siting/sky-chart.ts';
export { type Silhouette, type SunDiagram, type SunOnBox, type SunPath, sunDiagram } from './siting/sun-diagram.ts';
export { SUNSHINE, SUNSHINE_ORIGIN } from './siting/sunshine.ts';
export type { TimeSpan } from './siting/time-spans.ts';
export { BURN_THRESHOLDS_C, type Touch } from './siting/touch.ts';
export { leastEffortWords, monthSentence, surenessSentence, wayOutSentence } from './siting/verdict-words.ts';
export { type PlanShape, type WallPlan, wallPlan } from './siting/wall-plan.ts';
export { type ShadeMemory, shadeMemory } from './siting/wall-shade.ts';
export { type WallStanding, wallStanding } from './siting/wall-standing.ts';
export { touchText } from './siting/wording.ts';
export { type WorkerHeat, workerHeat } from './siting/worker-heat.ts';
export type { YearHours, YearResult } from './siting/year-result.ts';
export type { WeatherRow, YearWeather } from './siting/year-weather.ts';
export { clearSky, type Irradiance } from './solar/clear-sky.ts';
export { splitGlobal } from './solar/decomposition.ts';
export { extraterrestrialNormal } from './solar/extraterrestrial.ts';
export { type SunPosition, sunPosition } from './solar/sun-position.ts';
export { irradianceOnPlane, type PlaneIrradiance } from './solar/transposition.ts';
export { finished } from './steps.ts';
export { readQuantityText } from './unit-text.ts';
export {
  formatQuantity,
  fromDisplay,
  type QuantityKind,
  readNumberText,
  toDisplay,
  type UnitSystem,
  unitSymbol,
  usualUnits,
} from './units.ts';
