import { describe, expect, it } from 'vitest';
import { readThread } from '../../../../core/table/threads/read.ts';

const label = (text: string): string | undefined => {
  const found = readThread(text);
  return 'fault' in found ? undefined : found.thread.label;
};
const fault = (text: string): string => {
  const found = readThread(text);
  return 'fault' in found ? found.fault : '';
};

describe('a thread as it is written, at the borders of what a rig has', () => {
  it('is 5 to 300 mm wide', () => {
    expect(['5 x 0.75', '5.5 x 0.75', '300 x 1'].map(label)).toEqual(['M5 x 0.75', 'M5.5 x 0.75', 'M300 x 1']);
    expect(fault('4.9 x 0.75')).toBe('would be 4.9 mm wide');
    expect(fault('301 x 1')).toBe('would be 301 mm wide');
  });

  it('has a pitch of 0.2 to 4 mm', () => {
    expect(['60 x 0.2', '60 x 0.201', '60 x 4'].map(label)).toEqual(['M60 x 0.2', 'M60 x 0.201', 'M60 x 4']);
    expect(fault('60 x 0.19')).toBe('would have a pitch of 0.19 mm');
    expect(fault('60 x 4.1')).toBe('would have a pitch of 4.1 mm');
  });

  it('has a pitch of at most a fifth of its width', () => {
    expect(label('10 x 2')).toBe('M10 x 2');
    expect(fault('10 x 2.01')).toBe('would have a pitch of 2.01 mm at 10 mm');
  });

  it('is asked about up to a hundredth of a millimetre from the pitch of one that is known', () => {
    expect(fault('25 x 0.7599')).toMatch(/near that of M25 x 0\.75/);
    expect(label('25 x 0.76005')).toBe('M25 x 0.7601');
  });

  it('is one that is known up to five thousandths of its width', () => {
    expect(label('58.0049')).toBe('M58 x 0.75');
    expect(fault('58.00502')).toMatch(/no usual thread by its diameter alone/);
    expect(label('58.0049 x 0.75')).toBe('M58 x 0.75');
    expect(label('58.00502 x 0.75')).toBe('M58.005 x 0.75');
  });

  it('is told to five digits of its width and four of its pitch', () => {
    expect(label('123.4567 x 0.71234')).toBe('M123.46 x 0.7123');
    expect(label('W 123.4567 x 0.71234')).toBe('W 123.46 x 0.7123');
  });
});

describe('inches', () => {
  it('are meant by their sign, by a unified thread, and by a W before less than 5', () => {
    expect(label('0.8" x 1/36"')).toBe('RMS');
    expect(label('W 0.8 x 1/36')).toBe('RMS');
    expect(label('1 x 32 UN')).toBe('C (1 in x 32 TPI)');
    expect(label('W 5 x 0.75')).toBe('W 5 x 0.75');
    expect(fault('W 4.9 mm x 0.75')).toBe('would be 4.9 mm wide');
    expect(fault('0.8 x 1/36')).toBe('would be 0.8 mm wide');
  });
  it('are parted by a fraction as by turns', () => {
    // 25.4 / 36 = 0.70556.
    expect(label('25 x 1/36"')).toBe('M25 x 0.7056');
    expect(label('25 x 36 TPI')).toBe('M25 x 0.7056');
  });
});
