import * as v from 'valibot';
import { plugLimits, stripLimits } from '../../shared/burn/kerf-strip';
import { writing } from '../../shared/view/protocol';
import { address, count, figure, listOf, maybe } from '../../shared/view/shapes';
import { techniques } from '../../shared/view/techniques';

const named = maybe(v.string());
const ofRecipe = { uri: address, recipe: named, offset: maybe(count) };

/** What each command takes: one object. What may be left out is what there is only one of. */
export const taken = {
    'kerfbook.build': v.object({ ...ofRecipe, ...writing }),
    'kerfbook.coupon': v.object({
        uri: address,
        sheet: named,
        laser: named,
        cuts: maybe(v.pipe(count, v.minValue(stripLimits.least), v.maxValue(stripLimits.most))),
        fits: maybe(v.pipe(count, v.minValue(plugLimits.least), v.maxValue(plugLimits.most))),
        next: maybe(v.boolean()),
        ...writing,
    }),
    'kerfbook.finishRun': v.object({
        ...ofRecipe,
        /** As they are written in a run; every step as it was planned when left out. */
        lines: maybe(listOf(v.string())),
        notes: maybe(listOf(v.pipe(v.string(), v.maxLength(500)))),
    }),
    'kerfbook.new': v.object({
        title: v.pipe(v.string(), v.trim(), v.minLength(1)),
        technique: v.picklist(techniques),
        /** Address of the folder; the first of the workspace when left out. */
        folder: maybe(address),
        board: named,
        veneer: named,
        laser: named,
        /** A resin of the shop, a colour by its name, or `#1d5f7a`. */
        fill: named,
        art: maybe(address),
        size: maybe(v.object({ width: figure, height: figure })),
    }),
} as const;

export type CommandName = keyof typeof taken;
export type Taken<Name extends CommandName> = v.InferOutput<(typeof taken)[Name]>;
