import { showNumber } from './show';

/** What supplies are counted and measured in. */
export type SupplyUnit = 'pieces' | 'ml' | 'g' | 'cm2' | 'sheets';

/** "sheet" for one, "pieces" for several, "cm²". */
export function supplyUnit(amount: number, unit: SupplyUnit): string {
    if (unit === 'cm2') return 'cm²';
    return amount === 1 ? unit.replace(/s$/, '') : unit;
}

/** "1 sheet", "4 pieces", "1089 cm²". */
export function showSupply(amount: number, unit: SupplyUnit): string {
    return `${showNumber(amount, 1)} ${supplyUnit(amount, unit)}`;
}
