import { isBitmapArt } from '../art/bitmap';
import { resolutionAt } from '../art/raster/resolution';
import { showLength, showNumber, showRatio } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

/** Scan lines under one pixel from which on its square shows, and pixels on one line from which on most of them go to waste. */
const squares = 3;
const wasted = 4;

const page: Page = {
    id: 'picture-resolution',
    title: 'Resolution of a picture against the pitch',
    severities: ['warning', 'info'],
    condition: `A pixel of a picture is more than ${squares} scan lines wide at the size it is burnt, or more than ${wasted} pixels lie on one line.`,
    why: 'A coarse picture shows its pixels as squares and steps, however fine the scan. Of one that is much finer than the lines only the mean of its pixels is burnt; fine lines in it turn grey or vanish.',
    mend: 'Burn it smaller, or take a picture with more pixels; scale one that is too fine down beforehand, so that you see what is left.',
    source: commonPractice,
};

export const pictureResolution: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            const pitch = laser?.settings?.pitch;
            if (step.kind !== 'engrave' || laser === undefined || pitch === undefined) continue;
            for (const { artName, bitmap, index } of laser.placed) {
                const state = plan.arts.get(artName ?? '');
                const placement = step.placements[index];
                if (!bitmap || placement === undefined || state?.kind !== 'art' || !isBitmapArt(state.art)) continue;
                const resolution = resolutionAt(state.art.pixel, pitch);
                if (resolution === undefined) continue;
                const { pixel, pixelsPerLine } = resolution;
                const coarse = pixelsPerLine < 1 / squares;
                if (!coarse && pixelsPerLine <= wasted) continue;
                const size = `a pixel of ${artName} is ${showLength(pixel)} wide and the lines are ${showLength(pitch)} apart`;
                yield finding(page, {
                    severity: coarse ? 'warning' : 'info',
                    message: coarse
                        ? `Its pixels will show: ${size}, ${showNumber(1 / pixelsPerLine, 1)} lines to a pixel; at ${showRatio(pixelsPerLine * squares)} of its size they would not.`
                        : `Only the mean of its pixels is burnt: ${size}, ${showNumber(pixelsPerLine, 1)} pixels to a line.`,
                    where: placement.where,
                    step: step.index,
                });
            }
        }
    },
};
