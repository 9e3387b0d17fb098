import { AstUtils, type LangiumDocument } from 'langium';
import type { Offcut } from '../../shared/bench/offcut-yield';
import { rackName } from '../../shared/recipe/stock';
import type { CountedStock } from '../../shared/week/on-hand';
import * as ast from '../generated/ast';
import { isDay } from './day';
import { coatOf, glueOf, resinOf, sealerOf } from './fluids';
import { extentOf, quantityOf } from './quantity';

type Block = ast.Sheet | ast.Lot | ast.Fluid;

const parts = { hardener: 'hardener', pigment: 'pigment', powder: 'metal powder' } as const;

/** What is written as on hand in these files: of each thing the last count, and the offcuts of that day and later. */
export function stockOnHand(documents: readonly LangiumDocument[]): CountedStock[] {
    return documents.flatMap((document) => {
        const file = document.parseResult.value;
        if (!ast.isFile(file)) return [];
        return file.entries.flatMap((entry) => {
            if (ast.isSheet(entry)) return [entry, ...entry.items.filter(ast.isLot)].flatMap(ofSheet);
            return ast.isFluid(entry) ? ofFluid(entry) : [];
        });
    });
}

function ofSheet(block: ast.Sheet | ast.Lot): CountedStock[] {
    const sheet = ast.isLot(block) ? AstUtils.getContainerOfType(block, ast.isSheet) : block;
    if (sheet === undefined) return [];
    const last = lastCount(block, undefined);
    const written = (block.items as readonly ast.SheetItem[]).filter(ast.isOffcut);
    const counted =
        last?.counted ??
        written
            .map(({ counted: day }) => day ?? '')
            .sort()
            .at(-1);
    if (counted === undefined || !isDay(counted)) return [];
    const offcuts = written.flatMap(({ size, along, counted: day }): Offcut[] => {
        const extent = extentOf(size);
        if (extent === undefined || day === undefined || !isDay(day) || (last !== undefined && day < counted)) return [];
        const sides = { width: extent.width.value, height: extent.height.value };
        return [along === 'width' || along === 'height' ? { ...sides, grain: along } : sides];
    });
    const item = rackName({ name: sheet.name, ...(ast.isLot(block) && { lot: block.name }) });
    return [
        {
            item,
            kind: ast.isBoard(sheet) ? 'board' : 'veneer',
            counted,
            ...(last?.by === 'sheets' && { amount: last.amount }),
            by: 'sheets',
            offcuts,
        },
    ];
}

function ofFluid(block: ast.Fluid): CountedStock[] {
    const { density, kind } = fluidOf(block);
    return [undefined, ...(Object.keys(parts) as (keyof typeof parts)[])].flatMap((of): CountedStock[] => {
        const last = lastCount(block, of);
        if (last === undefined || last.by === 'sheets') return [];
        const item = of === undefined ? block.name : `${block.name} ${parts[of]}`;
        return [{ ...last, item, kind: of ?? kind, offcuts: [], ...(density === undefined ? {} : { density }) }];
    });
}

function fluidOf(block: ast.Fluid): { readonly density?: number; readonly kind: CountedStock['kind'] } {
    if (ast.isResin(block)) return { ...of(resinOf(block)), kind: 'resin' };
    if (ast.isSealer(block)) return { ...of(sealerOf(block)), kind: 'sealer' };
    if (ast.isGlue(block)) return { ...of(glueOf(block)), kind: 'glue' };
    return { ...of(coatOf(block)), kind: 'finish' };
}

function of({ density }: { readonly density?: { readonly value: number } }): { density?: number } {
    return density === undefined ? {} : { density: density.value };
}

function lastCount(
    { items }: Block,
    of: string | undefined,
): (Pick<CountedStock, 'counted' | 'by'> & { readonly amount: number }) | undefined {
    const counts = items.filter(ast.isOnHand).flatMap((item) => {
        const amount = quantityOf(item.amount);
        if (item.of !== of || amount === undefined || item.counted === undefined || !isDay(item.counted)) return [];
        const { dimension, value } = amount;
        if (dimension !== 'sheets' && dimension !== 'mass' && dimension !== 'volume') return [];
        return [{ counted: item.counted, amount: value, by: dimension }] as const;
    });
    return counts.toSorted((a, b) => (a.counted < b.counted ? -1 : 1)).at(-1);
}
