# Made with R 4.2.2. Run: Rscript power_reference.R
# The rows POWER-t/2 to /8 of expected.csv were solved by power.t.test with the default tolerance of its root finder,
# .Machine$double.eps^0.25, so only five to nine of their digits hold. The same calls with tol = 1e-14:
show <- function(id, value) cat(sprintf("%s %.14f\n", id, value))
p <- function(...) power.t.test(..., tol = 1e-14, strict = TRUE)
show("POWER-t/2 n", p(delta = 1, sd = 1, power = .9)$n)
show("POWER-t/3 n", p(delta = .5, sd = 1, power = .8)$n)
show("POWER-t/4 delta", p(n = 10, sd = 1, power = .8)$delta)
show("POWER-t/5 delta", p(n = 10, sd = 1, power = .8, type = "paired")$delta)
show("POWER-t/7 n", p(delta = 1, sd = 1, power = .9, alternative = "one.sided")$n)
show("POWER-t/8 n", p(delta = .5, sd = 1, power = .8, type = "paired")$n)
# The default leaves the far tail out.
show("POWER-t/10 n", power.t.test(delta = 1, sd = 1, power = .9, tol = 1e-14)$n)
