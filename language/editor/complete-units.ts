import type { AstNode } from 'langium';
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import { fromBase, toBase } from '../../shared/quantity/quantity';
import { units, unitsOf } from '../../shared/quantity/units';
import { isAtHand, isUsual, likelyUnits, short } from '../findings/number-words';
import { isAmount, isPosition, isQuantity, isSize } from '../generated/ast';
import { amountOf } from '../lowering/number';
import { propertyOfNumber } from '../vocabulary/lookup';

/** The units that the number before the cursor can have, likeliest first, each with what it would come to. */
export function proposeUnits(node: AstNode | undefined): (Partial<CompletionItem> & { label: string })[] {
    const holder = isAmount(node) ? node.$container : node;
    if (!isQuantity(holder) && !isSize(holder) && !isPosition(holder)) return [];
    const property = propertyOfNumber(holder);
    const amount = isAmount(node) ? node : isQuantity(holder) ? holder.low : isSize(holder) ? holder.height : holder.y;
    const written = amountOf(amount);
    if (property === undefined || written === undefined) return [];
    const likely = likelyUnits([written], property);
    return property.measures.flatMap((measure) => {
        const offered = unitsOf(measure.dimension).filter((unit) => isAtHand(unit, measure));
        return offered.map(({ name, factor, offset }) => {
            const rank = likely.indexOf(name);
            const usual = isUsual(written * factor + offset, measure);
            return {
                label: name,
                kind: CompletionItemKind.Unit,
                detail: conversion(written, name),
                sortText: `00${rank < 0 ? (usual ? 8 : 9) : rank}`,
            };
        });
    });
}

/** The unit in which a number is best told again. */
const retold: Readonly<Record<string, string>> = { d: 'h', h: 'min', min: 's', mm: 'in', 'mm/s': 'mm/min', degC: 'degF' };

function conversion(written: number, unit: string): string {
    const base = toBase(written, unit);
    const dimension = units.get(unit)?.dimension;
    const other = retold[unit] ?? (dimension === undefined ? unit : (unitsOf(dimension)[0]?.name ?? unit));
    if (base === undefined || unit === other) return `${short(written)} ${unit}`;
    return `${short(written)} ${unit} = ${short(fromBase(base, other))} ${other}`;
}
