import { airWhileEngraving } from './air-while-engraving';
import { artMissing } from './art-missing';
import { artProblems } from './art-problems';
import { deeperThanBlank } from './deeper-than-blank';
import { fillSandedAway } from './fill-sanded-away';
import { mirroredTwice } from './mirrored-twice';
import { noBacking } from './no-backing';
import { notInverse } from './not-inverse';
import { notMirrored } from './not-mirrored';
import { offBlank } from './off-blank';
import { outlineOfBitmap } from './outline-of-bitmap';
import type { Rule } from './rule';
import { scanAlongGrain } from './scan-along-grain';
import { shallowFill } from './shallow-fill';
import { thinFloor } from './thin-floor';
import { unsealedFill } from './unsealed-fill';
import { veneerProud } from './veneer-proud';
import { veneerThin } from './veneer-thin';

/** Every rule of the trade. Rules of the text itself live in the language room. */
export const allRules: readonly Rule[] = [
    artMissing,
    artProblems,
    deeperThanBlank,
    thinFloor,
    notMirrored,
    mirroredTwice,
    notInverse,
    shallowFill,
    unsealedFill,
    fillSandedAway,
    veneerProud,
    veneerThin,
    airWhileEngraving,
    scanAlongGrain,
    outlineOfBitmap,
    noBacking,
    offBlank,
];
