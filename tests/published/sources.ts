import type { Source } from './row.ts';

/** What is cited by more than one row. */
export const SMITH = (where: string): Source => ({
  title: 'Modern Optical Engineering, 4th ed.',
  by: 'W. J. Smith, McGraw-Hill',
  year: 2008,
  where,
});

export const MURPHY = (where: string): Source => ({
  title: 'Fundamentals of Light Microscopy and Electronic Imaging',
  by: 'D. B. Murphy, Wiley-Liss',
  year: 2001,
  where,
});

export const BORN_WOLF: Source = { title: 'Principles of Optics', by: 'M. Born, E. Wolf', year: 1999, where: '8.5.2, Table 8.2' };

export const TUBE_LENSES: Source = {
  title: 'Using Tube Lenses with Infinity Corrected Objectives',
  by: 'Edmund Optics, Imaging Resource Guide',
  where: 'section 9.2',
};

export const OBJECT_SPACE: Source = {
  title: 'Object Space Resolution, worked example of a 2448 x 2050 sensor of 3.45 µm',
  by: 'Edmund Optics, Imaging Resource Guide',
  where: 'section 2.2',
};

export const CAMERA_GLOSSARY: Source = {
  title: 'Resolution of Digital Cameras (glossary)',
  by: 'Olympus',
  where: 'olympus.cz/microscopy/39_9183.htm',
};

export const MICROSCOPE_MANUAL: Source = { title: 'Microscope manual, Optical Terminology', by: 'Olympus', where: 'p. 45' };

export const CLOSE_UP: Source = { title: 'Close-up lens', by: 'Wikipedia', year: 2024 };

export const COLLEGE_PHYSICS: Source = {
  title: 'College Physics, Example 26.5, Microscope Magnification',
  by: 'OpenStax',
  year: 2012,
};

export const GLASS_CATALOGUE: Source = {
  title: 'Optical glass catalogue, January 2017, as held in the refractiveindex.info database (CC0)',
  by: 'Schott; M. Polyanskiy',
  year: 2017,
};
