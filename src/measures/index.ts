// The list of measures: one line each.

import type { Measure } from "../model/reading.ts";
import { ageAtWork } from "./age-at-work.ts";
import { baySideMeasures } from "./bay-side.ts";
import { bearingWhereItTips } from "./bearing-where-it-tips.ts";
import { beyondStructuralRoots } from "./beyond-structural-roots.ts";
import { boreStep } from "./bore-step.ts";
import { changesOfDirection } from "./changes-of-direction.ts";
import { circleAcross } from "./circle-across.ts";
import { clearDistance } from "./clear-distance.ts";
import { clearWidth } from "./clear-width.ts";
import { coverOverPipe } from "./cover-over-pipe.ts";
import { crossingSpare } from "./crossing-spare.ts";
import { cutAngle } from "./cut-angle.ts";
import { cutForFill } from "./cut-for-fill.ts";
import { dampCourseAbove } from "./damp-course-above.ts";
import { daysAfter } from "./days-after.ts";
import { deadEndLength } from "./dead-end-length.ts";
import { depthBelowFooting } from "./depth-below-footing.ts";
import { depthBeside } from "./depth-beside.ts";
import { difference } from "./difference.ts";
import { distanceBehind } from "./distance-behind.ts";
import { distanceFromCrown } from "./distance-from-crown.ts";
import { distanceFromStem } from "./distance-from-stem.ts";
import { drainedFoot } from "./drained-foot.ts";
import { drivesOverDig } from "./drives-over-dig.ts";
import { dropAtEdge } from "./drop-at-edge.ts";
import { dropOfRun } from "./drop-of-run.ts";
import { equivalentJumpHeight } from "./equivalent-jump-height.ts";
import { fallFromWall } from "./fall-from-wall.ts";
import { fallOfRun } from "./fall-of-run.ts";
import { fallOfSurface } from "./fall-of-surface.ts";
import { fallsNear } from "./falls-near.ts";
import { gateBeyondTurn } from "./gate-beyond-turn.ts";
import { gateSpare } from "./gate-spare.ts";
import { groundFallFrom } from "./ground-fall-from.ts";
import { headroomSpare } from "./headroom-spare.ts";
import { heightOver } from "./height-over.ts";
import { invertStep } from "./invert-step.ts";
import { keepsOff } from "./keeps-off.ts";
import { leadsOn } from "./leads-on.ts";
import { leftOverMeasures } from "./left-over.ts";
import { levelOver } from "./level-over.ts";
import { axleLeft, loadLeft } from "./load-left.ts";
import { meetingMeasures } from "./meeting.ts";
import { mouthCornerSpare } from "./mouth-corner-spare.ts";
import { tippingSlope } from "./tipping-slope.ts";
import { monthsCut } from "./months-cut.ts";
import { monthsInSeason } from "./months-in-season.ts";
import { notInACircle } from "./not-in-a-circle.ts";
import { outsideSlopeLine } from "./outside-slope-line.ts";
import { overlapShare } from "./overlap-share.ts";
import { peakFlow } from "./peak-flow.ts";
import { planLengthOf } from "./plan-length.ts";
import { leavesForwards } from "./leaves-forwards.ts";
import { reversedLength } from "./reversed-length.ts";
import { roddingLength } from "./rodding-length.ts";
import { roomBesideParked } from "./room-beside-parked.ts";
import { saidSo } from "./said-so.ts";
import { shareOfRootZone } from "./share-of-root-zone.ts";
import { slopeAcross } from "./slope-across.ts";
import { slopeAlong } from "./slope-along.ts";
import { slopeOfBank } from "./slope-of-bank.ts";
import { standsBeforehand } from "./stands-beforehand.ts";
import { statedMeasures } from "./stated.ts";
import { stepAtEdge } from "./step-at-edge.ts";
import { stockShare } from "./stock-share.ts";
import { surveyMisfit } from "./survey-misfit.ts";
import { takesNo } from "./takes-no.ts";
import { topsoilLeft } from "./topsoil-left.ts";
import { turningRoom } from "./turning-room.ts";
import { unevenness } from "./unevenness.ts";
import { roomBesideMirrors } from "./room-beside-mirrors.ts";
import { sweptClearOf } from "./swept-clear-of.ts";
import { sightAlongRoad } from "./sight-along-road.ts";
import { wayFromDrop, wheelsFromDrop } from "./from-drop.ts";
import { changeOfGradeMeasures, clearanceOverCrest, clearOfSag } from "./over-crests.ts";
import { wheelsClearOf } from "./wheels-clear-of.ts";

const all: readonly Measure[] = [
  ageAtWork,
  bearingWhereItTips,
  beyondStructuralRoots,
  boreStep,
  clearDistance,
  clearWidth,
  coverOverPipe,
  crossingSpare,
  cutAngle,
  cutForFill,
  dampCourseAbove,
  daysAfter,
  depthBelowFooting,
  depthBeside,
  difference,
  distanceBehind,
  distanceFromCrown,
  distanceFromStem,
  drainedFoot,
  drivesOverDig,
  dropAtEdge,
  dropOfRun,
  equivalentJumpHeight,
  fallFromWall,
  fallOfRun,
  fallOfSurface,
  groundFallFrom,
  heightOver,
  invertStep,
  keepsOff,
  leadsOn,
  levelOver,
  monthsCut,
  monthsInSeason,
  notInACircle,
  outsideSlopeLine,
  overlapShare,
  peakFlow,
  planLengthOf,
  roddingLength,
  saidSo,
  shareOfRootZone,
  slopeAcross,
  slopeAlong,
  slopeOfBank,
  standsBeforehand,
  stepAtEdge,
  stockShare,
  surveyMisfit,
  takesNo,
  turningRoom,
  changesOfDirection,
  ...baySideMeasures,
  circleAcross,
  deadEndLength,
  fallsNear,
  gateBeyondTurn,
  gateSpare,
  headroomSpare,
  ...leftOverMeasures,
  ...meetingMeasures,
  loadLeft,
  axleLeft,
  mouthCornerSpare,
  tippingSlope,
  leavesForwards,
  reversedLength,
  roomBesideParked,
  wheelsClearOf,
  wayFromDrop,
  wheelsFromDrop,
  roomBesideMirrors,
  sweptClearOf,
  sightAlongRoad,
  ...changeOfGradeMeasures,
  clearanceOverCrest,
  clearOfSag,
  topsoilLeft,
  unevenness,
  ...statedMeasures,
];

/** Measures by name. */
export const measures: ReadonlyMap<string, Measure> = new Map(all.map((measure) => [measure.name, measure]));
