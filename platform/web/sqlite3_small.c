/* SQLite for the page, without the statements that the library never makes (app/records): those
 * that alter, analyse, reindex or vacuum tables, views, virtual tables, unions. Together with the log,
 * which needs shared memory that a page has none of, they would be a twenty-fifth of what a first
 * visit loads. SQLite's one file keeps the grammar of all that; its actions must be somewhere, and say so.
 */
#include "sqlite3.c"

static void left_out(Parse *parse) { sqlite3ErrorMsg(parse, "left out of this SQLite"); }

static void sqlite3AlterRenameTable(Parse *parse, SrcList *tables, Token *name) {
    sqlite3SrcListDelete(parse->db, tables);
    left_out(parse);
}
static void sqlite3AlterRenameColumn(Parse *parse, SrcList *tables, Token *old, Token *name) {
    sqlite3SrcListDelete(parse->db, tables);
    left_out(parse);
}
static void sqlite3AlterBeginAddColumn(Parse *parse, SrcList *tables) {
    sqlite3SrcListDelete(parse->db, tables);
    left_out(parse);
}
static void sqlite3AlterFinishAddColumn(Parse *parse, Token *column) { left_out(parse); }
static void sqlite3AlterDropColumn(Parse *parse, SrcList *tables, const Token *column) {
    sqlite3SrcListDelete(parse->db, tables);
    left_out(parse);
}
static void sqlite3Analyze(Parse *parse, Token *first, Token *second) { left_out(parse); }
static void sqlite3Reindex(Parse *parse, Token *first, Token *second) { left_out(parse); }
static void sqlite3Vacuum(Parse *parse, Token *name, Expr *into) {
    sqlite3ExprDelete(parse->db, into);
    left_out(parse);
}
static void sqlite3CreateView(Parse *parse, Token *begin, Token *first, Token *second,
                              ExprList *names, Select *select, int temporary, int unless_there) {
    sqlite3ExprListDelete(parse->db, names);
    sqlite3SelectDelete(parse->db, select);
    left_out(parse);
}
static void sqlite3VtabBeginParse(Parse *parse, Token *first, Token *second, Token *module,
                                  int unless_there) {
    left_out(parse);
}
static void sqlite3VtabFinishParse(Parse *parse, Token *end) { left_out(parse); }
static void sqlite3VtabArgInit(Parse *parse) { left_out(parse); }
static void sqlite3VtabArgExtend(Parse *parse, Token *argument) { left_out(parse); }
