import { searchWorkbook } from '../workbook/store/search.ts';
import { procedures } from './context.ts';

export const searchProcedures = {
  find: procedures.search.find.handler(({ context, input }) =>
    searchWorkbook(context.book().connection, input.text, input.build),
  ),
};
