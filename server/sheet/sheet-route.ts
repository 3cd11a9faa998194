/** POST /api/sheet: the site sheet as a file to keep. */
import type { Request, Response } from 'express';
import { siteFileName } from '../../model/index.ts';
import { goneSignal } from '../compute/answer.ts';
import type { Compute } from '../compute/compute.ts';
import { sheetRequest } from '../requests.ts';
import { readLinkBase } from './link-base.ts';

export function answerWithSheet(compute: Compute) {
  return async (request: Request, response: Response): Promise<void> => {
    const asked = sheetRequest(request);
    const linkBase = asked.linkBase ?? readLinkBase(`${request.protocol}://${request.get('host') ?? ''}/`) ?? undefined;
    const pdf = await compute.run(
      'sheet',
      { ...asked, ...(linkBase !== undefined && { linkBase }) },
      goneSignal(response),
    );
    const title = (asked.site as { title?: unknown }).title;
    const name = siteFileName(typeof title === 'string' ? title : '');
    response.set({
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="site-sheet-${name}.pdf"`,
    });
    response.send(Buffer.from(pdf as Uint8Array));
  };
}
