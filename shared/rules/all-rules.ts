import { artMissing } from './art/art-missing';
import { artProblems } from './art/art-problems';
import { finerThanBeam } from './art/finer-than-beam';
import { narrowSlots } from './art/narrow-slots';
import { narrowerThanKerf } from './art/narrower-than-kerf';
import { nothingBurns } from './art/nothing-burns';
import { offBlank } from './art/off-blank';
import { outlineOfBitmap } from './art/outline-of-bitmap';
import { partsVanish } from './art/parts-vanish';
import { pictureResolution } from './art/picture-resolution';
import { tangledArt } from './art/tangled-art';
import { tonesUnused } from './art/tones-unused';
import { checkDisagrees } from './depth/check-disagrees';
import { cutUnreachable } from './depth/cut-unreachable';
import { deeperThanBlank } from './depth/deeper-than-blank';
import { depthPromise } from './depth/depth-promise';
import { depthUnreachable } from './depth/depth-unreachable';
import { goesOn } from './depth/goes-on';
import { noCoupon } from './depth/no-coupon';
import { noCutTest } from './depth/no-cut-test';
import { noToneSquares } from './depth/no-tone-squares';
import { outsideCoupon } from './depth/outside-coupon';
import { pocketWithoutFloor } from './depth/pocket-without-floor';
import { powerDrifts } from './depth/power-drifts';
import { runMissesCheck } from './depth/run-misses-check';
import { runOutsideTold } from './depth/run-outside-told';
import { settingsMissDepth } from './depth/settings-miss-depth';
import { staleCoupon } from './depth/stale-coupon';
import { thinFloor } from './depth/thin-floor';
import { throughUnsure } from './depth/through-unsure';
import { tooDeepToTouch } from './depth/too-deep-to-touch';
import { deepPour } from './fill/deep-pour';
import { fillSandedAway } from './fill/fill-sanded-away';
import { laserOnResin } from './fill/laser-on-resin';
import { mixOffRatio } from './fill/mix-off-ratio';
import { oilBeforeFilling } from './fill/oil-before-filling';
import { pigmentOverload } from './fill/pigment-overload';
import { secondColour } from './fill/second-colour';
import { shallowFill } from './fill/shallow-fill';
import { shortPotLife } from './fill/short-pot-life';
import { smallMix } from './fill/small-mix';
import { unsealedFill } from './fill/unsealed-fill';
import { blushes } from './finishing/blushes';
import { doesNotHold } from './finishing/does-not-hold';
import { dustStains } from './finishing/dust-stains';
import { foodContact } from './finishing/food-contact';
import { gritJump } from './finishing/grit-jump';
import { gritsCoarsen } from './finishing/grits-coarsen';
import { ironStains } from './finishing/iron-stains';
import { leavesScorch } from './finishing/leaves-scorch';
import { notForOutdoors } from './finishing/not-for-outdoors';
import { oilyRags } from './finishing/oily-rags';
import { oneFaceFinished } from './finishing/one-face-finished';
import { packedTooSoon } from './finishing/packed-too-soon';
import { recoatWindow } from './finishing/recoat-window';
import { sealedInPart } from './finishing/sealed-in-part';
import { toneSandedAway } from './finishing/tone-sanded-away';
import { beyondBoundary } from './inlay/beyond-boundary';
import { glueOnSealed } from './inlay/glue-on-sealed';
import { gluedUnder } from './inlay/glued-under';
import { grainUnknown } from './inlay/grain-unknown';
import { halvesDiffer } from './inlay/halves-differ';
import { jamsBeforeFloor } from './inlay/jams-before-floor';
import { kerfDecidesFit } from './inlay/kerf-decides-fit';
import { laidAlready } from './inlay/laid-already';
import { laidTooCoarsely } from './inlay/laid-too-coarsely';
import { leftProud } from './inlay/left-proud';
import { marksAlike } from './inlay/marks-alike';
import { marksNoRoom } from './inlay/marks-no-room';
import { marksStay } from './inlay/marks-stay';
import { mirroredFace } from './inlay/mirrored-face';
import { mirroredTwice } from './inlay/mirrored-twice';
import { moistureMismatch } from './inlay/moisture-mismatch';
import { movementAcrossInlay } from './inlay/movement-across-inlay';
import { noGlue } from './inlay/no-glue';
import { notInverse } from './inlay/not-inverse';
import { notMirrored } from './inlay/not-mirrored';
import { openTime } from './inlay/open-time';
import { partBelowFace } from './inlay/part-below-face';
import { roundWithoutMarks } from './inlay/round-without-marks';
import { veneerProud } from './inlay/veneer-proud';
import { veneerThin } from './inlay/veneer-thin';
import { veneersMeet } from './inlay/veneers-meet';
import { wetWood } from './inlay/wet-wood';
import { wideSeam } from './inlay/wide-seam';
import { woodNotWiped } from './inlay/wood-not-wiped';
import { wrongSideUp } from './inlay/wrong-side-up';
import { beyondField } from './machine/beyond-field';
import { beyondMachine } from './machine/beyond-machine';
import { beyondSheet } from './machine/beyond-sheet';
import { fileTooLong } from './machine/file-too-long';
import { markGone } from './machine/mark-gone';
import { placeLost } from './machine/place-lost';
import { coatNotDry } from './order/coat-not-dry';
import { cutTooEarly } from './order/cut-too-early';
import { faceDown } from './order/face-down';
import { fillBeforeDry } from './order/fill-before-dry';
import { finishBeforeSanding } from './order/finish-before-sanding';
import { flipInWords } from './order/flip-in-words';
import { flippedOnBacking } from './order/flipped-on-backing';
import { flippedWet } from './order/flipped-wet';
import { manyToWeed } from './order/many-to-weed';
import { maskLeftOn } from './order/mask-left-on';
import { outOfOrder } from './order/out-of-order';
import { outOfPress } from './order/out-of-press';
import { peelBeforeDry } from './order/peel-before-dry';
import { peeledBeforeLaid } from './order/peeled-before-laid';
import { sandBeforeCure } from './order/sand-before-cure';
import { sandBeforePeel } from './order/sand-before-peel';
import { tapeDoesNotStick } from './order/tape-does-not-stick';
import { tapeStaysLong } from './order/tape-stays-long';
import { tooCold } from './order/too-cold';
import { burnBeforeFlush } from './piece/burn-before-flush';
import { cutThroughWork } from './piece/cut-through-work';
import { depthInSum } from './piece/depth-in-sum';
import { fillRunsOver } from './piece/fill-runs-over';
import { floorInGlue } from './piece/floor-in-glue';
import { holeInPocket } from './piece/hole-in-pocket';
import { islandFallsOut } from './piece/island-falls-out';
import { laserOnCoat } from './piece/laser-on-coat';
import { laserOnFoil } from './piece/laser-on-foil';
import { laserOnGlue } from './piece/laser-on-glue';
import { laserOnOldTape } from './piece/laser-on-old-tape';
import { laserOnWet } from './piece/laser-on-wet';
import { markCovered } from './piece/mark-covered';
import { markDugAway } from './piece/mark-dug-away';
import { maskBurntOpen } from './piece/mask-burnt-open';
import { maskUnderPour } from './piece/mask-under-pour';
import { pocketInPocket } from './piece/pocket-in-pocket';
import { pocketTaken } from './piece/pocket-taken';
import { skinLeft } from './piece/skin-left';
import { sliverLeft } from './piece/sliver-left';
import { thinWall } from './piece/thin-wall';
import type { Rule } from './rule';
import { airOffWhileCutting } from './settings/air-off-while-cutting';
import { airWhileEngraving } from './settings/air-while-engraving';
import { coarsePitch } from './settings/coarse-pitch';
import { dottedDepth } from './settings/dotted-depth';
import { finePitch } from './settings/fine-pitch';
import { foilAndFibre } from './settings/foil-and-fibre';
import { longBurn } from './settings/long-burn';
import { lowContrast } from './settings/low-contrast';
import { maskDimsTone } from './settings/mask-dims-tone';
import { neverBurn } from './settings/never-burn';
import { noBacking } from './settings/no-backing';
import { offsetBesideKerf } from './settings/offset-beside-kerf';
import { oneHeavyPass } from './settings/one-heavy-pass';
import { outOfFocus } from './settings/out-of-focus';
import { paceUnused } from './settings/pace-unused';
import { powerCurveFalls } from './settings/power-curve-falls';
import { scanAlongGrain } from './settings/scan-along-grain';
import { shortOvertravel } from './settings/short-overtravel';

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
    goesOn,
    thinFloor,
    pocketWithoutFloor,
    tooDeepToTouch,
    toneSandedAway,
    leavesScorch,
    leftProud,
];
const earlierSteps = [
    depthInSum,
    pocketInPocket,
    pocketTaken,
    gluedUnder,
    laidAlready,
    holeInPocket,
    thinWall,
    fillRunsOver,
    cutThroughWork,
    laserOnWet,
    laserOnCoat,
    laserOnFoil,
    laserOnGlue,
    laserOnOldTape,
    floorInGlue,
    sliverLeft,
    burnBeforeFlush,
    islandFallsOut,
    markDugAway,
    markCovered,
    oilBeforeFilling,
    maskUnderPour,
    maskBurntOpen,
    throughUnsure,
    noCutTest,
    noToneSquares,
    cutUnreachable,
    skinLeft,
];
const mirrorAndInverse = [notMirrored, mirroredTwice, notInverse, mirroredFace, halvesDiffer];
const fit = [
    veneerProud,
    veneerThin,
    jamsBeforeFloor,
    laidTooCoarsely,
    wideSeam,
    wrongSideUp,
    partBelowFace,
    kerfDecidesFit,
    veneersMeet,
    partsVanish,
    noBacking,
    offsetBesideKerf,
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
    narrowerThanKerf,
    recoatWindow,
    secondColour,
];
const order = [
    outOfOrder,
    faceDown,
    flipInWords,
    flippedWet,
    flippedOnBacking,
    markGone,
    placeLost,
    noGlue,
    openTime,
    fillBeforeDry,
    glueOnSealed,
    laserOnResin,
    cutTooEarly,
    outOfPress,
    peelBeforeDry,
    peeledBeforeLaid,
    sandBeforePeel,
    sandBeforeCure,
    coatNotDry,
    gritJump,
    gritsCoarsen,
    finishBeforeSanding,
    sealedInPart,
    maskLeftOn,
    manyToWeed,
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
    maskDimsTone,
    coarsePitch,
    paceUnused,
    finePitch,
    fileTooLong,
    outOfFocus,
    shortOvertravel,
    checkDisagrees,
    runMissesCheck,
    runOutsideTold,
    powerDrifts,
];
const layers = [
    doesNotHold,
    woodNotWiped,
    tooCold,
    blushes,
    dustStains,
    ironStains,
    tapeDoesNotStick,
    tapeStaysLong,
    oneFaceFinished,
    notForOutdoors,
    packedTooSoon,
];
const wood = [grainUnknown, movementAcrossInlay, moistureMismatch, wetWood, lowContrast, beyondSheet];
const safety = [neverBurn, foilAndFibre, foodContact, oilyRags, longBurn];

/** The rules of the trade by what they are about, in the order in which a maker meets it. Those of the text itself live in the language room. */
export const ruleFamilies: readonly { readonly title: string; readonly rules: readonly Rule[] }[] = [
    { title: 'Art', rules: art },
    { title: 'Safety', rules: safety },
    { title: 'Depth', rules: depth },
    { title: 'What earlier steps left', rules: earlierSteps },
    { title: 'Mirror and inverse', rules: mirrorAndInverse },
    { title: 'Fit', rules: fit },
    { title: 'Fill', rules: fill },
    { title: 'What lies on what', rules: layers },
    { title: 'Order', rules: order },
    { title: 'Burn', rules: burn },
    { title: 'Wood', rules: wood },
];

/** Every rule of the trade, family by family. */
export const allRules: readonly Rule[] = ruleFamilies.flatMap(({ rules }) => rules);
