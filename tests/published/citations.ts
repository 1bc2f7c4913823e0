import type { SourceId } from '../../core/checked/sources.ts';

/** Author, work and place of every published check, by its id. Nothing of it stands anywhere else. */

interface Work {
  readonly title: string;
  /** Author, publisher or both. */
  readonly by: string;
  readonly year?: number;
}

export interface Citation extends Work {
  readonly id: string;
  /** What the page calls the work. */
  readonly source: SourceId;
  /** Page, section or address; '' where the work is small. */
  readonly where: string;
}

/** @param places what stands in each place of the work, by ids */
const work = (source: SourceId, of: Work, places: Readonly<Record<string, string>>): Citation[] =>
  Object.entries(places).flatMap(([where, ids]) => ids.split(' ').map((id) => ({ ...of, id, source, where })));

export const CITATIONS: readonly Citation[] = [
  work(
    'guide-tube-lenses',
    { title: 'Using Tube Lenses with Infinity Corrected Objectives', by: 'Edmund Optics, Imaging Resource Guide' },
    { 'section 9.2': 'INF-001 INF-002', 'section 9.2; by the sine 11.2, and the tangent worked out': 'CNV-004' },
  ),
  work('microscope-manual', { title: 'Microscope manual, Optical Terminology', by: 'Olympus' }, { 'p. 45': 'INF-012 RES-201' }),
  work(
    'measuring-machine',
    { title: 'On calculating the magnification of a vision measuring machine', by: 'vmm3d.com', year: 2022 },
    { '': 'INF-015' },
  ),
  work(
    'guide-camera',
    { title: 'Object Space Resolution, worked example of a 2448 x 2050 sensor of 3.45 µm', by: 'Edmund Optics, Imaging Resource Guide' },
    { 'section 2.2': 'PIX-003 PIX-004 PIX-001 PIX-002' },
  ),
  work(
    'camera-glossary',
    { title: 'Resolution of Digital Cameras (glossary)', by: 'Olympus' },
    { 'olympus.cz/microscopy/39_9183.htm': 'PIX-005 PIX-006' },
  ),
  work('maker-aperture', { title: 'F/#, Working F/# and Numerical Aperture', by: 'Opto Engineering' }, { '': 'AP-001' }),
  work('image-side', { title: 'NA on the image side is NA / M, N = 1 / (2 NA)', by: 'textbooks of optics' }, { '': 'AP-003' }),
  work('microscope-notes', { title: 'Microscope basics (notes)', by: 'blekenbleu, GitHub' }, { 'microscope/basics.md': 'AP-005' }),
  work('full-stops', { title: 'Diffraction (f-stop sequence); also ISO 517', by: 'Imatest documentation' }, { '': 'AP-006' }),
  work(
    'light-microscopy',
    { title: 'Fundamentals of Light Microscopy and Electronic Imaging', by: 'D. B. Murphy, Wiley-Liss', year: 2001 },
    {
      'Table 4-1, p. 54; λ = 0.55 µm inferred; the column prints two decimals':
        'RES-001 RES-002 RES-003 RES-004 DOF-001 DOF-002 DOF-003 DOF-004',
      'depth of field, n λ / NA² in all': 'THN-007',
      'Table 4-1, p. 54, prints the whole; the others worked out from it': 'CNV-001',
      'Table 4-1, p. 54': 'BRT-001',
      'p. 55': 'AP-007',
    },
  ),
  work('microscopy-hints', { title: 'Hints to understand optical microscopy', by: 'Chinetek' }, { '': 'RES-202' }),
  work(
    'image-processing',
    { title: 'Microscope Image Processing', by: 'Q. Wu, F. Merchant, K. Castleman, Academic Press', year: 2008 },
    { 'ch. 17': 'RES-203' },
  ),
  work('encyclopaedia-resolution', { title: 'Angular resolution', by: 'Wikipedia' }, { '': 'RES-204' }),
  work(
    'maker-resolution',
    { title: 'Tech note: Determining the theoretical resolution', by: 'Infinity Photo-Optical' },
    { '': 'RES-205', 'by the tangent as printed; by the sine worked out': 'CNV-005' },
  ),
  work(
    'optical-engineering',
    { title: 'Modern Optical Engineering, 4th ed.', by: 'W. J. Smith, McGraw-Hill', year: 2008 },
    {
      'p. 192 f.': 'RES-401',
      'p. 187': 'DOF-341',
      'chapter on image evaluation, table of wavefront and Strehl ratio': 'SA-001',
      'pp. 41-44, example 3.1': 'RAY-001',
      'pp. 41-44, example 3.1; signs restored': 'RAY-002',
      'pp. 119-120, table 6.1; radius signs restored': 'RAY-010 RAY-011 RAY-012 RAY-013',
      'p. 115, eq. 6.3p': 'THN-001',
    },
  ),
  work('homework', { title: 'Homework solution, Abbe equation', by: 'homeworksource.com' }, { '': 'RES-211 RES-212 RES-213' }),
  work(
    'microscopy-course',
    {
      title: 'Electronic Imaging Detectors, digital camera resolution requirements (table)',
      by: 'Molecular Expressions, Florida State University',
    },
    { '': 'PIX-101 PIX-102 PIX-103 PIX-104 PIX-106 PIX-108 PIX-111 PIX-113 PIX-115 PIX-117' },
  ),
  work(
    'optical-theory',
    { title: 'Principles of Optics', by: 'M. Born, E. Wolf', year: 1999 },
    { '8.5.2, Table 8.2': 'DIF-002', '8.5.2; all digits of the first zero': 'CNV-002', '8.5.2': 'CNV-003' },
  ),
  work(
    'magazine-column',
    { title: 'Rose is a Rose is a Rose', by: 'W. J. Smith, SPIE', year: 2004 },
    { 'oemagazine, July 2004': 'DIF-009' },
  ),
  work(
    'contrast-tables',
    { title: 'Table of the diffraction-limited MTF', by: 'W. J. Smith; C. S. Williams, O. A. Becklund' },
    { '': 'DIF-010 DIF-010b' },
  ),
  work('sampling-text', { title: 'Sampling by a square aperture', by: 'G. C. Holst, and any text on sampling' }, { '': 'DIF-012' }),
  work(
    'contrast-text',
    { title: 'Modulation Transfer Function in Optical and Electro-Optical Systems', by: 'G. Boreman, SPIE', year: 2021 },
    { 'ch. 6': 'DIF-014' },
  ),
  work('university-depth', { title: 'Depth of Field equation', by: 'University of Minnesota, BIPL', year: 2008 }, { '': 'DOF-322' }),
  work(
    'telescope-optics',
    { title: 'Notes on telescope optics', by: 'telescope-optics.net' },
    { '4.4 Defocus, eq. 23 to 25': 'DOF-343', '9.1 Refracting telescope objective: achromats': 'ACH-001' },
  ),
  work('formula-collection', { title: 'Numerical aperture', by: 'Wolfram Formula Repository' }, { '': 'AP-004' }),
  work('encyclopaedia-close-up', { title: 'Close-up lens', by: 'Wikipedia', year: 2024 }, { '': 'CU-002 CU-003 CU-004' }),
  work('close-up-article', { title: 'Close-up Lens or Close-up Filters', by: 'thecustomizewindows.com', year: 2013 }, { '': 'CU-005' }),
  work(
    'college-physics',
    { title: 'College Physics, Example 26.5, Microscope Magnification', by: 'OpenStax', year: 2012 },
    { '': 'WD-001 WD-002 WD-003' },
  ),
  work(
    'encyclopaedia-magnification',
    { title: 'Optics: longitudinal magnification', by: 'R. Kingslake, Encyclopaedia Britannica' },
    { '': 'WD-005' },
  ),
  work(
    'encyclopaedia-aperture',
    { title: 'Numerical aperture, working (effective) f-number', by: 'Wikipedia, after J. E. Greivenkamp', year: 2004 },
    { 'p. 29': 'AP-002b' },
  ),
  work('objective-threads', { title: 'ISO 8038', by: 'ISO' }, { '': 'STD-003' }),
  work('american-threads', { title: 'ANSI B1.1 thread form; the mount by its common description', by: 'ANSI' }, { '': 'THR-001' }),
  work('metric-threads', { title: 'ISO 724, basic dimensions, from the profile of ISO 68-1', by: 'ISO' }, { '': 'THR-002' }),
  work('whitworth-threads', { title: 'BS 84, parallel screw threads of Whitworth form', by: 'BSI' }, { '': 'THR-003' }),
  work(
    'doublet-catalogue',
    {
      title: 'Unmounted achromatic doublets, 25.4 mm wide, coated for 400 to 700 nm: radii, thicknesses, glasses, f and f_b',
      by: "Thorlabs, from a stored copy of the catalogue's page",
    },
    {
      '': 'TUBE-301 TUBE-302 TUBE-303 TUBE-304 TUBE-305 TUBE-306 TUBE-307 TUBE-308 RAY-301 RAY-302 RAY-303 RAY-304 RAY-305 RAY-306 RAY-307 RAY-308',
    },
  ),
  work(
    'weighted-mean',
    { title: 'Inverse Variance Weighted Mean, worked example', by: 'H. Henson, MATLAB Central', year: 2018 },
    { 'fileexchange/67789-inverse-variance-weighted-mean': 'SAW-001' },
  ),
  work(
    'uncertainty-guide',
    { title: 'Guide to the expression of uncertainty in measurement, JCGM 100', by: 'BIPM and others', year: 2008 },
    { '4.3.7, example': 'SAW-002' },
  ),
  work('statistics', { title: 'e-Handbook of Statistical Methods', by: 'NIST and SEMATECH' }, { '1.3.6.7.4': 'SAW-003' }),
  work(
    'optical-glass',
    { title: 'Optical Glass', by: 'P. Hartmann, SPIE Press PM249', year: 2014 },
    { 'p. 37, eq. 3.10: (C,t) .5450 + .004743 V, (F,e) .4884 - .000526 V, (g,F) .6438 - .001682 V, (i,g) 1.7241 - .008382 V': 'GLS-001' },
  ),
  work(
    'glass-catalogue',
    {
      title: 'Optical glass catalogue, January 2017, as held in the refractiveindex.info database (CC0)',
      by: 'Schott; M. Polyanskiy',
      year: 2017,
    },
    { '': 'GLS-003 GLS-101 GLS-102 GLS-103 GLS-104 GLS-105 GLS-106 GLS-107 GLS-108 GLS-109 GLS-111 GLS-112 GLS-114 GLS-116 GLS-150' },
  ),
  work('glass-sheet', { title: 'N-BK7 data sheet', by: 'Schott' }, { '': 'GLS-201' }),
  work(
    'paper-fluoride',
    { title: 'A redetermination of some optical properties of calcium fluoride', by: 'I. H. Malitson, Appl. Opt. 2, 1103', year: 1963 },
    { "n_d also read in the glass catalogue of 2017, whose V_d, 95.23, is another melt's": 'GLS-202' },
  ),
  work(
    'paper-silica',
    {
      title: 'Interspecimen comparison of the refractive index of fused silica',
      by: 'I. H. Malitson, J. Opt. Soc. Am. 55, 1205',
      year: 1965,
    },
    { '': 'GLS-203' },
  ),
  work(
    'lens-listing',
    {
      title: 'Double Gauss F/2, available glasses',
      by: 'a lens listing with its indices and third-order sums, kept with the tests of an open library',
      year: 2017,
    },
    { '': 'RAY-100 RAY-101 RAY-102 RAY-103 RAY-105 RAY-107' },
  ),
  work(
    'glass-catalogue-other',
    { title: 'Optical glass catalogue, its year not told, as held in the refractiveindex.info database (CC0)', by: 'Ohara; M. Polyanskiy' },
    { '': 'GLS-151' },
  ),
  work(
    'engineering-science',
    { title: 'Optical Engineering Science, ch. 4, aplanatic doublet', by: 'S. Rolt, Wiley', year: 2020 },
    {
      'of its radii 121.25, -81.78 and -281.88; the third, printed as -81.29, contradicts them by a turned digit pair': 'ACH-003',
      'worked example of chapter 4; its third radius misprinted as above': 'ACH-003b',
    },
  ),
  work('optics-text', { title: 'Optics, 6.3.2', by: 'E. Hecht' }, { '': 'ACH-004' }),
  work('telescope-makers', { title: "Rule of thumb of the telescope maker's texts", by: 'A. E. Conrady; E. Hecht' }, { '': 'ACH-005' }),
  work(
    'eye',
    { title: 'CIE 1924 photopic luminous efficiency', by: 'CIE, in the tables of the Colour & Vision Research Laboratory', year: 1924 },
    { 'cvrl.org, read in a copy': 'VL-001' },
  ),
  work('lens-design', { title: 'Lens Design Fundamentals', by: 'R. Kingslake, Academic Press', year: 1978 }, { '': 'RAY-200' }),
  work(
    'lens-collection',
    { title: 'Lens Design, 4th ed.', by: 'M. Laikin, CRC Press', year: 2007 },
    { 'p. 44, as transcribed in an open library': 'RAY-363' },
  ),
  work('field-curvature', { title: 'Petzval field curvature', by: 'probsee.com' }, { 'probsee.com/p/Petzval_field_curvature': 'THN-002' }),
  work('maker-primer', { title: 'Fundamental Optics', by: 'Melles Griot; CVI' }, { '': 'THN-004' }),
  work(
    'thin-achromats',
    {
      title: 'the same equations for two lenses in contact; a median field of -0.36 f to -0.37 f is a rule of the trade',
      by: 'W. J. Smith',
    },
    { '': 'THN-005' },
  ),
].flat();
