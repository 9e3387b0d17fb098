import type { LangiumDocument } from 'langium';
import type { Resin } from '../../shared/recipe/stock';
import { isBuiltIn } from '../built-in';
import { type Entry, isCoat, isGlue, isResin, isSealer } from '../generated/ast';
import { coatOf, glueOf, resinOf, sealerOf } from '../lowering/fluids';
import { isPoured } from './poured';
import { declared } from './shop-here';
import type { Start, StartInlay } from './start';

export interface Supplies {
    readonly sealer: Start['sealer'];
    readonly resin: Start['resin'];
    readonly finish: Start['finish'];
    readonly glue: StartInlay['glue'];
}

/**
 * What a recipe is sealed, filled, glued and finished with: the shop's own where it has some, else what is built in.
 * Figures are the longest of what is written, so that no wait is too short.
 * @param wood colour of the wood, from which the resin is to stand out
 */
export function suppliesOf(documents: readonly LangiumDocument[], wood: string): Supplies {
    const own = documents.filter(({ uri }) => !isBuiltIn(uri.toString()));
    const pick = <T extends Entry & { name: string }, U extends { name: string; kind?: string }>(
        is: (node: unknown) => node is T,
        read: (node: T) => U,
        usual: string,
        good: (thing: U) => boolean = () => true,
    ): U | undefined => {
        const all = declared(own, is).map(read).filter(good);
        const like = all.find(({ name, kind }) => name === usual || kind === usual);
        return (
            like ??
            all[0] ??
            declared(documents, is)
                .map(read)
                .find(({ name }) => name === usual)
        );
    };
    const resins = declared(own, isResin).map(resinOf).filter(isPoured);
    const resin =
        resins.toSorted((a, b) => apart(b.colour, wood) - apart(a.colour, wood))[0] ??
        pick(isResin, resinOf, 'table-top-epoxy', ({ mix }) => mix !== undefined);
    const sealer = pick(isSealer, sealerOf, 'shellac');
    const glue = pick(isGlue, glueOf, 'wood-glue');
    const finish = pick(isCoat, coatOf, 'shellac-coat');
    return {
        sealer: { name: sealer?.name ?? 'shellac', ...longest('dry', sealer?.dry) },
        resin: resin === undefined ? { name: 'table-top-epoxy' } : pour(resin),
        finish: { name: finish?.name ?? 'shellac-coat' },
        glue: { name: glue?.name ?? 'wood-glue', film: glue?.film?.value ?? 0.06, ...longest('cure', glue?.cure) },
    };
}

/** What a new recipe has to know of a resin. */
export function pour(resin: Resin): Start['resin'] {
    return {
        name: resin.name,
        ...longest('cure', resin.cure),
        ...(resin.deepestPour === undefined ? {} : { deepestPour: resin.deepestPour.value - resin.deepestPour.tolerance }),
    };
}

function longest<K extends string>(key: K, time: { value: number; tolerance: number } | undefined): { [key in K]?: number } {
    return (time === undefined ? {} : { [key]: time.value + time.tolerance }) as { [key in K]?: number };
}

/** How far two colours lie from each other in lightness; enough to choose by. */
export function apart(a: string, b: string): number {
    return Math.abs(lightness(a) - lightness(b));
}

/** 0 to 1, of a hex colour: the weights of Rec. 709 for red, green and blue. */
function lightness(hex: string): number {
    const [r = 0, g = 0, b = 0] = (/^#(..)(..)(..)/.exec(hex) ?? []).slice(1).map((part) => Number.parseInt(part, 16) / 255);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
