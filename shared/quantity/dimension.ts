/**
 * What a number measures. Units are checked against these as types: a length cannot stand where
 * a speed is wanted. The comment beside each is the base unit in which values are kept.
 */
export type Dimension =
    | 'length' // mm
    | 'area' // mm2
    | 'volume' // mm3
    | 'time' // s
    | 'speed' // mm/s
    | 'acceleration' // mm/s2
    | 'power' // W
    | 'ratio' // 1 (100 % = 1)
    | 'dose' // J/mm2
    | 'removal-energy' // J/mm3
    | 'mass' // g
    | 'density' // g/mm3
    | 'spread' // g/mm2, mass on an area
    | 'temperature' // degC
    | 'angle' // rad
    | 'money' // one of the shop's currency
    | 'sheets' // 1, things that are bought whole
    | 'count'; // a bare number

/** How each dimension is named to a maker, with an example of how it is written. */
export const dimensionWords: Readonly<Record<Dimension, { readonly a: string; readonly example: string }>> = {
    length: { a: 'a length', example: '0.5 mm' },
    area: { a: 'an area', example: '12 cm2' },
    volume: { a: 'a volume', example: '30 ml' },
    time: { a: 'a time', example: '12 h' },
    speed: { a: 'a speed', example: '300 mm/s' },
    acceleration: { a: 'an acceleration', example: '6000 mm/s2' },
    power: { a: 'a power', example: '45 W' },
    ratio: { a: 'a percentage', example: '40 %' },
    dose: { a: 'a dose', example: '1.2 J/mm2' },
    'removal-energy': { a: 'an energy for each volume', example: '3 J/mm3' },
    mass: { a: 'a mass', example: '25 g' },
    density: { a: 'a density', example: '610 kg/m3' },
    spread: { a: 'a spread', example: '150 g/m2' },
    temperature: { a: 'a temperature', example: '20 degC' },
    angle: { a: 'an angle', example: '45 deg' },
    money: { a: 'an amount of money', example: '48' },
    sheets: { a: 'a number of sheets', example: '1 sheet' },
    count: { a: 'a plain number', example: '3' },
};
