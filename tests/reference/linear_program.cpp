#include "tests/reference/linear_program.h"

#include <glpk.h>

#include <array>
#include <stdexcept>

namespace carriageway::reference {

namespace {

/// GLPK lets a basis pass whose rows are broken by this much (relative to their bounds); its own
/// default of 1e-6 would be coarser than what is compared.
constexpr double simplex_tolerance = 1e-11;

} // namespace

LinearProgram::LinearProgram(int columns) : program_(glp_create_prob()), columns_(columns) {
    glp_term_out(GLP_OFF);
    glp_add_cols(program_, columns);
    for (int i = 1; i <= columns; ++i) glp_set_col_bnds(program_, i, GLP_FR, 0.0, 0.0);
}

LinearProgram::~LinearProgram() { glp_delete_prob(program_); }

void LinearProgram::add_row(Terms terms, int type, double bound) {
    std::array<int, 8> columns{};
    std::array<double, 8> factors{};
    int count = 0;
    for (const auto& [column, factor] : terms) {
        ++count;
        columns.at(static_cast<std::size_t>(count)) = column + 1;
        factors.at(static_cast<std::size_t>(count)) = factor;
    }
    const int row = glp_add_rows(program_, 1);
    glp_set_row_bnds(program_, row, type, bound, bound);
    glp_set_mat_row(program_, row, count, columns.data(), factors.data());
}

void LinearProgram::at_least(Terms terms, double bound) { add_row(terms, GLP_LO, bound); }

void LinearProgram::exactly(Terms terms, double value) { add_row(terms, GLP_FX, value); }

void LinearProgram::bound_column(int column, double lo, double hi) {
    glp_set_col_bnds(program_, column + 1, GLP_DB, lo, hi);
}

std::optional<LinearProgram::Optimum> LinearProgram::minimise(Terms cost) {
    glp_set_obj_dir(program_, GLP_MIN);
    for (int i = 0; i <= columns_; ++i) glp_set_obj_coef(program_, i, 0.0);
    for (const auto& [column, factor] : cost) glp_set_obj_coef(program_, column + 1, factor);
    glp_std_basis(program_);
    glp_smcp how;
    glp_init_smcp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.tol_bnd = simplex_tolerance;
    how.tol_dj = simplex_tolerance;
    if (glp_simplex(program_, &how) != 0) throw std::runtime_error("GLPK gave up");
    const int status = glp_get_status(program_);
    if (status == GLP_NOFEAS) return std::nullopt;
    if (status != GLP_OPT) throw std::runtime_error("GLPK found no optimum");
    Optimum optimum;
    optimum.cost = glp_get_obj_val(program_);
    for (int i = 1; i <= columns_; ++i) optimum.x.push_back(glp_get_col_prim(program_, i));
    return optimum;
}

} // namespace carriageway::reference
