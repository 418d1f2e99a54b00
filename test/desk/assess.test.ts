import { describe, expect, it } from 'vitest';
import { answer } from '../../src/desk/assess.ts';
import { assess } from '../../src/judge/assess.ts';
import { deskReport } from '../../src/judge/desk-report.ts';
import { writeBackup } from '../../src/store/backup.ts';
import { Field, post, stake } from '../judge/field.ts';

const JOB = { id: 'test-job-1', createdAt: '2026-05-01T08:00:00.000Z' };

function book(): Field {
  const field = new Field().site();
  field.pull(stake('A'), stake('B'));
  field.set('1').pullsTo(post('1'), [stake('A'), stake('B')]);
  return field;
}

const fileOf = (text: string) => () => text;
const missing = () => {
  throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
};

describe('npm run assess', () => {
  it('prints what the phone would say of the same log, as JSON', () => {
    const { log } = book();
    const { code, out, complaint } = answer(['job.txt'], fileOf(writeBackup(JOB, log, JOB.createdAt)));
    expect(code).toBe(0);
    expect(complaint).toBe('');
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(deskReport(log))));
    expect(JSON.parse(out)).toMatchObject(JSON.parse(JSON.stringify(assess(log))));
    expect(JSON.parse(out)).toMatchObject({ format: 'swingtape-assessment', version: 1, job: 'Test ring' });
  });
  it('holds no number that JSON cannot', () => {
    const { log } = book();
    const finite = (value: unknown): boolean =>
      typeof value === 'number'
        ? Number.isFinite(value)
        : typeof value !== 'object' || value === null || Object.values(value).every(finite);
    expect(finite(deskReport(log))).toBe(true);
    expect(finite(deskReport([]))).toBe(true);
  });
  it('says in one sentence what is wrong with a file, and exits 1', () => {
    expect(answer(['job.txt'], fileOf(''))).toMatchObject({ code: 1, out: '' });
    expect(answer(['job.txt'], fileOf('')).complaint).toMatch(/^Backup: the file is empty/);
    const cut = writeBackup(JOB, book().log, JOB.createdAt).slice(0, 500);
    expect(answer(['job.txt'], fileOf(cut))).toMatchObject({ code: 1, out: '' });
    expect(answer(['job.txt'], fileOf(cut)).complaint).toMatch(/cut off/);
  });
  it('names a file that is not there', () => {
    expect(answer(['no.txt'], missing)).toEqual({
      code: 1,
      out: '',
      complaint: 'FILE: “no.txt” cannot be read (ENOENT); name a backup file.',
    });
  });
  it('shows how it is used when it is used wrong', () => {
    const usage = 'Usage: npm run assess -- FILE, where FILE is a backup of a job.';
    expect(answer([], missing)).toEqual({ code: 2, out: '', complaint: usage });
    expect(answer(['a', 'b'], missing)).toEqual({ code: 2, out: '', complaint: usage });
  });
});
