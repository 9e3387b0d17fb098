import { airOffWhileCutting } from './air-off-while-cutting';
import { airWhileEngraving } from './air-while-engraving';
import { artMissing } from './art-missing';
import { artProblems } from './art-problems';
import { beyondBoundary } from './beyond-boundary';
import { beyondField } from './beyond-field';
import { beyondMachine } from './beyond-machine';
import { beyondSheet } from './beyond-sheet';
import { checkDisagrees } from './check-disagrees';
import { coarsePitch } from './coarse-pitch';
import { cutTooEarly } from './cut-too-early';
import { deepPour } from './deep-pour';
import { deeperThanBlank } from './deeper-than-blank';
import { depthPromise } from './depth-promise';
import { depthUnreachable } from './depth-unreachable';
import { dottedDepth } from './dotted-depth';
import { fileTooLong } from './file-too-long';
import { fillBeforeDry } from './fill-before-dry';
import { fillSandedAway } from './fill-sanded-away';
import { finePitch } from './fine-pitch';
import { finerThanBeam } from './finer-than-beam';
import { finishBeforeSanding } from './finish-before-sanding';
import { foilAndFibre } from './foil-and-fibre';
import { foodContact } from './food-contact';
import { glueOnSealed } from './glue-on-sealed';
import { grainUnknown } from './grain-unknown';
import { gritJump } from './grit-jump';
import { gritsCoarsen } from './grits-coarsen';
import { halvesDiffer } from './halves-differ';
import { jamsBeforeFloor } from './jams-before-floor';
import { laserOnResin } from './laser-on-resin';
import { leavesScorch } from './leaves-scorch';
import { leftProud } from './left-proud';
import { longBurn } from './long-burn';
import { lowContrast } from './low-contrast';
import { marksAlike } from './marks-alike';
import { marksNoRoom } from './marks-no-room';
import { marksStay } from './marks-stay';
import { maskLeftOn } from './mask-left-on';
import { mirroredFace } from './mirrored-face';
import { mirroredTwice } from './mirrored-twice';
import { mixOffRatio } from './mix-off-ratio';
import { moistureMismatch } from './moisture-mismatch';
import { movementAcrossInlay } from './movement-across-inlay';
import { narrowSlots } from './narrow-slots';
import { neverBurn } from './never-burn';
import { noBacking } from './no-backing';
import { noCoupon } from './no-coupon';
import { notInverse } from './not-inverse';
import { notMirrored } from './not-mirrored';
import { nothingBurns } from './nothing-burns';
import { offBlank } from './off-blank';
import { oilyRags } from './oily-rags';
import { oneHeavyPass } from './one-heavy-pass';
import { outOfFocus } from './out-of-focus';
import { outOfOrder } from './out-of-order';
import { outlineOfBitmap } from './outline-of-bitmap';
import { outsideCoupon } from './outside-coupon';
import { partsVanish } from './parts-vanish';
import { peelBeforeDry } from './peel-before-dry';
import { pictureResolution } from './picture-resolution';
import { pigmentOverload } from './pigment-overload';
import { pocketWithoutFloor } from './pocket-without-floor';
import { powerCurveFalls } from './power-curve-falls';
import { recoatWindow } from './recoat-window';
import { roundWithoutMarks } from './round-without-marks';
import type { Rule } from './rule';
import { sandBeforeCure } from './sand-before-cure';
import { sandBeforePeel } from './sand-before-peel';
import { scanAlongGrain } from './scan-along-grain';
import { settingsMissDepth } from './settings-miss-depth';
import { shallowFill } from './shallow-fill';
import { shortOvertravel } from './short-overtravel';
import { shortPotLife } from './short-pot-life';
import { smallMix } from './small-mix';
import { staleCoupon } from './stale-coupon';
import { tangledArt } from './tangled-art';
import { thinFloor } from './thin-floor';
import { toneSandedAway } from './tone-sanded-away';
import { tonesUnused } from './tones-unused';
import { tooDeepToTouch } from './too-deep-to-touch';
import { unsealedFill } from './unsealed-fill';
import { veneerProud } from './veneer-proud';
import { veneerThin } from './veneer-thin';
import { wideSeam } from './wide-seam';

const art = [
    artMissing,
    artProblems,
    nothingBurns,
    outlineOfBitmap,
    pictureResolution,
    tonesUnused,
    tangledArt,
    finerThanBeam,
    dottedDepth,
    offBlank,
    beyondBoundary,
    beyondField,
];
const depth = [
    depthPromise,
    deeperThanBlank,
    thinFloor,
    pocketWithoutFloor,
    tooDeepToTouch,
    toneSandedAway,
    leavesScorch,
    leftProud,
];
const mirrorAndInverse = [notMirrored, mirroredTwice, notInverse, mirroredFace, halvesDiffer];
const fit = [
    veneerProud,
    veneerThin,
    jamsBeforeFloor,
    wideSeam,
    partsVanish,
    noBacking,
    roundWithoutMarks,
    marksAlike,
    marksNoRoom,
    marksStay,
];
const fill = [
    shallowFill,
    unsealedFill,
    fillSandedAway,
    deepPour,
    shortPotLife,
    smallMix,
    mixOffRatio,
    pigmentOverload,
    narrowSlots,
    recoatWindow,
];
const order = [
    outOfOrder,
    fillBeforeDry,
    glueOnSealed,
    laserOnResin,
    cutTooEarly,
    peelBeforeDry,
    sandBeforePeel,
    sandBeforeCure,
    gritJump,
    gritsCoarsen,
    finishBeforeSanding,
    maskLeftOn,
];
const burn = [
    airWhileEngraving,
    airOffWhileCutting,
    scanAlongGrain,
    beyondMachine,
    depthUnreachable,
    settingsMissDepth,
    noCoupon,
    outsideCoupon,
    staleCoupon,
    powerCurveFalls,
    oneHeavyPass,
    coarsePitch,
    finePitch,
    fileTooLong,
    outOfFocus,
    shortOvertravel,
    checkDisagrees,
];
const wood = [grainUnknown, movementAcrossInlay, moistureMismatch, lowContrast, beyondSheet];
const safety = [neverBurn, foilAndFibre, foodContact, oilyRags, longBurn];

/** The rules of the trade by what they are about, in the order in which a maker meets it. Those of the text itself live in the language room. */
export const ruleFamilies: readonly { readonly title: string; readonly rules: readonly Rule[] }[] = [
    { title: 'Art', rules: art },
    { title: 'Safety', rules: safety },
    { title: 'Depth', rules: depth },
    { title: 'Mirror and inverse', rules: mirrorAndInverse },
    { title: 'Fit', rules: fit },
    { title: 'Fill', rules: fill },
    { title: 'Order', rules: order },
    { title: 'Burn', rules: burn },
    { title: 'Wood', rules: wood },
];

/** Every rule of the trade, family by family. */
export const allRules: readonly Rule[] = ruleFamilies.flatMap(({ rules }) => rules);
