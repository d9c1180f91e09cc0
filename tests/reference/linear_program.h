// Small linear programs, solved by GLPK's simplex.
#pragma once

#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

struct glp_prob;

namespace carriageway::reference {

/// minimise cost·x subject to rows of a·x >= at_least; columns are free unless bounded.
class LinearProgram {
  public:
    explicit LinearProgram(int columns);
    ~LinearProgram();
    LinearProgram(const LinearProgram&) = delete;
    LinearProgram& operator=(const LinearProgram&) = delete;

    /// Terms are (column from 0, factor).
    using Terms = std::initializer_list<std::pair<int, double>>;
    void at_least(Terms terms, double bound);
    void exactly(Terms terms, double value);
    void bound_column(int column, double lo, double hi);

    /// The optimum; nothing when no x satisfies the rows. Throws when GLPK ends in any other way.
    struct Optimum {
        double cost = 0.0;
        std::vector<double> x;
    };
    std::optional<Optimum> minimise(Terms cost);

  private:
    void add_row(Terms terms, int type, double bound);

    glp_prob* program_;
    int columns_;
};

} // namespace carriageway::reference
