import type { Pressed } from '../bench/virtual-press';
import { area } from '../geometry/measure';
import { grow } from '../geometry/offset';
import type { InlayPlan } from '../plan/plan';
import { showArea, showLength, showVolume } from '../quantity/show';
import type { Fact } from './step-facts';

/** What the press shows, in a sentence, and whether it goes well. */
export interface PressVerdict {
    readonly good: boolean;
    readonly sentence: string;
}

/** Where clashes are wider than twice this, mm, and more than that part of the veneer's own area, the halves are not the same shape. */
const tight = 0.1;
const mismatch = 0.002;

export function pressVerdict(inlay: InlayPlan, pressed: Pressed): PressVerdict {
    const { insertion, seat, bottoms } = pressed;
    const what = inlay.relief.kind === 'cut' ? 'part' : 'veneer';
    if (bottoms) {
        const lies =
            inlay.pocket.kind === 'cut' ? 'the part goes all the way into its opening' : `the ${what} lies on its glue all over`;
        return { good: true, sentence: `Pressed together, ${lies}, ${showLength(insertion)} deep.` };
    }
    const clash = area(inlay.collides);
    const short = `It goes in ${showLength(insertion)} instead of ${showLength(seat)}`;
    if (area(grow(inlay.collides, -tight)) > mismatch * area(inlay.standing)) {
        const why = isTurnedWrong(inlay)
            ? 'One half has to be the mirror image of the other, since it is turned over, and here it is not'
            : 'The two halves do not match';
        return {
            good: false,
            sentence: `${why}: ${showArea(clash)} of the ${what} lie on the board’s face. ${short}, and hangs up to ${showLength(widest(pressed))} above the floor.`,
        };
    }
    return {
        good: false,
        sentence: `It jams between the walls. ${short}: up to ${showLength(widest(pressed))} of air stay under it.`,
    };
}

/** Turned over, a half is its own mirror image: exactly one of the two has to be mirrored before. */
export function isTurnedWrong({ relief, pocket }: InlayPlan): boolean {
    return relief.kind === 'engrave' && (relief.mirror.length + pocket.mirror.length) % 2 === 0;
}

/** The numbers of a press, most needed first. */
export function pressFacts(inlay: InlayPlan, pressed: Pressed): Fact[] {
    const { insertion, bottoms, contact, stops, gapVolume, open } = pressed;
    const facts: Fact[] = [
        { label: 'goes in', value: `${showLength(insertion)} of ${showLength(pressed.seat)}` },
        { label: 'stands proud', value: showLength(Math.max(0, (inlay.veneer?.value ?? 0) - insertion)) },
        { label: 'largest gap under it', value: showLength(widest(pressed)) },
        { label: 'to be filled by glue', value: showVolume(gapVolume) },
    ];
    const first = stops[0];
    if (!bottoms && first !== undefined) {
        facts.push({
            label: 'touches',
            value: `${showArea(contact)}, tightest at ${showLength(first.x)}, ${showLength(first.y)} from the top left`,
        });
    }
    if (bottoms && inlay.pocketLaser.perimeter > 0) {
        facts.push({ label: 'seam after sanding', value: `${showLength(open / inlay.pocketLaser.perimeter)} on average` });
    }
    return facts;
}

function widest({ gap }: Pressed): number {
    let most = 0;
    for (const mm of gap) if (mm > most) most = mm;
    return most;
}
