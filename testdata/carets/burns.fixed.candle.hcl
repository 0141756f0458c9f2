# Three candles are burned before one is sold, and all of each candle's burns
# must have passed.

  recipe "never-burned" {
    made_for = "sale"
    pot      = "pitcher-4"
    wax "northlight-pillar" { weight = "22 oz" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186 °F"
      over = "water bath"
    }
    step "pour" {
      at    = "176 °F"
      leave = "3/8 in"
    }
    step "relief holes" { after = "2 h" }
    step "second pour" {
      after = "1 h"
      at    = "182 °F"
    }
    step "unmold" { after = "14 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
  }

  recipe "one-failed" {
    made_for = "sale"
    pot      = "pitcher-4"
    wax "northlight-pillar" { weight = "22 oz" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186 °F"
      over = "water bath"
    }
    step "pour" {
      at    = "176 °F"
      leave = "3/8 in"
    }
    step "relief holes" { after = "2 h" }
    step "second pour" {
      after = "1 h"
      at    = "182 °F"
    }
    step "unmold" { after = "14 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
    test_burn "2026-10-01" {
      formula = "40000vn-syj0h9"
      candle  = "A"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
    test_burn "2026-10-02" {
      formula = "40000vn-syj0h9"
      candle  = "B"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
    test_burn "2026-10-03" {
      formula = "40000vn-syj0h9"
      candle  = "C"
      cycle   = 9
      to_end  = true
      result  = "fail"
    }
  }

  recipe "for-a-class" {
    made_for = "class"
    pot      = "pitcher-4"
    wax "northlight-pillar" { weight = "22 oz" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186 °F"
      over = "water bath"
    }
    step "pour" {
      at    = "176 °F"
      leave = "3/8 in"
    }
    step "relief holes" { after = "2 h" }
    step "second pour" {
      after = "1 h"
      at    = "182 °F"
    }
    step "unmold" { after = "14 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
    test_burn "2026-10-01" {
      formula = "40000vn-syj0h9"
      candle  = "A"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
    test_burn "2026-10-02" {
      formula = "40000vn-syj0h9"
      candle  = "B"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
  }

  recipe "for-ourselves" {
    made_for = "own use"
    pot      = "pitcher-4"
    wax "northlight-pillar" { weight = "22 oz" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186 °F"
      over = "water bath"
    }
    step "pour" {
      at    = "176 °F"
      leave = "3/8 in"
    }
    step "relief holes" { after = "2 h" }
    step "second pour" {
      after = "1 h"
      at    = "182 °F"
    }
    step "unmold" { after = "14 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
  }

  recipe "three-passed" {
    made_for = "sale"
    pot      = "pitcher-4"
    wax "northlight-pillar" { weight = "22 oz" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186 °F"
      over = "water bath"
    }
    step "pour" {
      at    = "176 °F"
      leave = "3/8 in"
    }
    step "relief holes" { after = "2 h" }
    step "second pour" {
      after = "1 h"
      at    = "182 °F"
    }
    step "unmold" { after = "14 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
    test_burn "2026-10-01" {
      formula = "40000vn-syj0h9"
      candle  = "A"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
    test_burn "2026-10-02" {
      formula = "40000vn-syj0h9"
      candle  = "B"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
    test_burn "2026-10-03" {
      formula = "40000vn-syj0h9"
      candle  = "C"
      cycle   = 9
      to_end  = true
      result  = "pass"
    }
  }
