import { expect, it } from 'vitest';
import { showSupply } from '../../shared/quantity/show-supply';

it('one is no plural, and areas have their sign', () => {
    expect(showSupply(1, 'sheets')).toBe('1 sheet');
    expect(showSupply(2, 'sheets')).toBe('2 sheets');
    expect(showSupply(0.3, 'sheets')).toBe('0.3 sheets');
    expect(showSupply(1, 'pieces')).toBe('1 piece');
    expect(showSupply(1089, 'cm2')).toBe('1089 cm²');
    expect(showSupply(2.54, 'g')).toBe('2.5 g');
});
