import { units } from '../../shared/quantity/units';
import { nearest } from '../../shared/recipe/nearest';

/** Spellings from other hands and keyboards. */
const aliases: ReadonlyMap<string, string> = new Map(
    Object.entries({
        inch: 'in',
        inches: 'in',
        ins: 'in',
        mil: 'thou',
        mils: 'thou',
        micron: 'um',
        microns: 'um',
        metre: 'm',
        meter: 'm',
        millimetre: 'mm',
        millimeter: 'mm',
        millimetres: 'mm',
        millimeters: 'mm',
        centimetre: 'cm',
        centimeter: 'cm',
        sec: 's',
        secs: 's',
        second: 's',
        seconds: 's',
        mins: 'min',
        minute: 'min',
        minutes: 'min',
        hr: 'h',
        hrs: 'h',
        hour: 'h',
        hours: 'h',
        day: 'd',
        days: 'd',
        watt: 'W',
        watts: 'W',
        w: 'W',
        percent: '%',
        pct: '%',
        gram: 'g',
        grams: 'g',
        gr: 'g',
        kilo: 'kg',
        pound: 'lb',
        lbs: 'lb',
        ounce: 'oz',
        ounces: 'oz',
        litre: 'l',
        liter: 'l',
        litres: 'l',
        liters: 'l',
        cc: 'cm3',
        ccm: 'cm3',
        c: 'degC',
        C: 'degC',
        f: 'degF',
        F: 'degF',
        '°': 'deg',
        '°C': 'degC',
        '°F': 'degF',
        degree: 'deg',
        degrees: 'deg',
        mms: 'mm/s',
        'mm/sec': 'mm/s',
        'in/sec': 'in/s',
        'mm/m': 'mm/min',
        ipm: 'in/min',
        ips: 'in/s',
        gsm: 'g/m2',
        gcm3: 'g/cm3',
        kgm3: 'kg/m3',
    }),
);

/** The unit that was most likely meant by a spelling that names no unit. */
export function unitMeant(written: string): string | undefined {
    const plain = written.replaceAll(/[µμ]/g, 'u').replaceAll('²', '2').replaceAll('³', '3');
    if (units.has(plain)) return plain;
    const alias = aliases.get(plain) ?? aliases.get(plain.toLowerCase());
    if (alias !== undefined) return alias;
    const sameLetters = [...units.keys()].find((name) => name.toLowerCase() === plain.toLowerCase());
    return sameLetters ?? (plain.length > 1 ? nearest(plain, units.keys()) : undefined);
}
