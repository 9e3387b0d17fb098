import type { Dimension } from '../../shared/quantity/dimension';
import type { Quantity } from '../../shared/quantity/quantity';
import { nowhere } from '../../shared/quantity/where';
import type { Burn, Coupon, Laser, Wood } from '../../shared/recipe/stock';

export function quantity(value: number, dimension: Dimension, tolerance = 0): Quantity {
    return { value, tolerance, dimension, unit: '', where: nowhere };
}

/** A CO2 laser of 45 W with a spot of 0.15 mm. */
export const shed: Laser = {
    name: 'shed',
    where: nowhere,
    power: quantity(45, 'power'),
    spot: quantity(0.15, 'length'),
    wavelength: quantity(10.6e-3, 'length'),
    topSpeed: quantity(600, 'speed'),
    acceleration: quantity(6000, 'acceleration'),
};

export function woodOf(density: number): Wood {
    return {
        name: 'wood',
        where: nowhere,
        density: quantity(density, 'density'),
        bleeds: false,
        colour: '',
        burnt: '',
        cautions: [],
    };
}

export function burn(ratio: number, speed: number, passes: number, depth: number, tolerance = 0): Burn {
    return {
        power: quantity(ratio, 'ratio'),
        speed: quantity(speed, 'speed'),
        passes,
        depth: quantity(depth, 'length', tolerance),
        where: nowhere,
    };
}

export function couponOf(burns: readonly Burn[], pitch = 0.1): Coupon {
    return { sheet: 'board', laser: 'shed', pitch: quantity(pitch, 'length'), burns, where: nowhere };
}

/** Numbers of a bell curve, mean 0 and deviation 1, the same every time for one seed. */
export function bell(seed: number): () => number {
    let state = seed;
    const even = (): number => {
        state = (state * 48271) % 2147483647;
        return state / 2147483647;
    };
    // Small seeds start with small numbers; some steps on they have mixed.
    for (let i = 0; i < 10; i++) even();
    return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}
