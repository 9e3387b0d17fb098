import { isBitmapArt } from '../../art/bitmap';
import { resolutionAt } from '../../art/raster/resolution';
import { spotOf } from '../../burn/beam';
import { pitchForSpot } from '../../burn/pitch';
import { showLength, showNumber, showRatio } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Recipe } from '../../recipe/recipe';
import type { Engrave } from '../../recipe/step';
import { lengthWithin } from '../helpers/length-within';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Scan lines under one pixel from which on its square shows, and pixels on one line from which on most of them go to waste. */
const squares = 3;
const wasted = 4;

const page: Page = {
    id: 'picture-resolution',
    title: 'Resolution of a picture against the pitch',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: `A pixel of a picture is more than ${squares} scan lines wide at the size it is burnt, or more than ${wasted} pixels lie on one line.`,
    why: 'A coarse picture shows its pixels as squares and steps, however fine the scan. Of one that is much finer than the lines only the mean of its pixels is burnt; fine lines in it turn grey or vanish.',
    mend: 'Take a picture with more pixels, or burn it smaller, which is offered down to half of its width. Of one that is too fine, scale the picture down beforehand, so that you see what is left; burn it larger; or scan with a finer pitch, as far as the spot can show it.',
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
                const size = phrase`a pixel of ${artName} is ${showLength(pixel)} wide and the lines are ${showLength(pitch)} apart`;
                yield finding(page, {
                    severity: coarse ? 'warning' : 'info',
                    message: coarse
                        ? phrase`Its pixels will show: ${size}, ${showNumber(1 / pixelsPerLine, 1)} lines to a pixel; at ${showRatio(pixelsPerLine * squares)} of its size they would not.`
                        : phrase`Only the mean of its pixels is burnt: ${size}, ${showNumber(pixelsPerLine, 1)} pixels to a line.`,
                    where: placement.where,
                    step: step.index,
                    fixes: coarse
                        ? burnSmaller(plan.recipe, artName, pixelsPerLine * squares)
                        : scanFiner(plan.recipe, step, pixel),
                });
            }
        }
    },
};

/** Less than this part of its size, and it is another piece: own judgement, no source. */
const leastShare = 0.5;

/** Another width that is written for this picture, if it is used only once, so that nothing else grows smaller with it. */
function burnSmaller({ arts, steps }: Recipe, artName: string | undefined, share: number): Fix[] {
    const art = arts.find(({ name }) => name === artName);
    const side = art?.width ?? art?.height;
    if (art === undefined || side === undefined || (art.width !== undefined && art.height !== undefined)) return [];
    const uses = steps.flatMap((step) => ('placements' in step ? step.placements : []));
    if (share < leastShare || uses.filter((use) => use.kind === 'art' && use.art.value === artName).length > 1) return [];
    const most = side.value * share;
    const found = lengthWithin({ low: most * 0.95, high: most, best: most }, side.unit);
    if (found === undefined) return [];
    const which = art.width === undefined ? 'high' : 'wide';
    return [
        {
            title: phrase`Burn ${art.name} ${found.text} ${which}`,
            changes: [{ do: 'replace', where: side.where, text: found.text }],
        },
    ];
}

/** A finer pitch than the one that is written, no finer than hides the lines, with the other settings solved again. */
function scanFiner({ laser }: Recipe, { pitch, power, speed, passes }: Engrave, pixel: number): Fix[] {
    const hides = pitchForSpot(spotOf(laser));
    if (pitch === undefined || hides === undefined || (power ?? speed ?? passes) !== undefined) return [];
    const found = lengthWithin({ low: hides, high: Math.min(pixel * wasted, pitch.value), best: pixel * wasted }, pitch.unit);
    if (found === undefined) return [];
    return [
        { title: phrase`Scan at a pitch of ${found.text}`, changes: [{ do: 'replace', where: pitch.where, text: found.text }] },
    ];
}
