#include "bed_examples.hpp"
#include <cstdio>
using namespace heatmatch;
TEST_CASE("x") {
    struct R{double D,H,L,P,top,h,days,lid,mean,sheath,wall;};
    const R rows[]={
#include "/tmp/ht_scratch/lid.inc"
    };
    for(const R&r:rows){
        Store s=bright_store(r.D,r.H); s.top_u_w_m2k=r.top;
        auto c=bed_of(s,rod_of(r.L,1,.05),.27,r.h,20); c.days=r.h>20?r.days+1:1;
        auto t=bed_temperatures(c,r.P); double gap=(r.H-r.L)/2; double at=bed_temperature_c(c,r.P,gap);
        double k=c.fill.conductivity.at(273.15+at);
        double share=(r.lid-t.edge_c)/(at-t.edge_c);
        double x=r.top/k;
        std::printf("D%.2f gap %.3f U %.0f h %2.0f: lid %.1f T(s) %.1f edge %.1f share %.2f  1/(1+Us/k) %.2f  sheath %+.1f%% wall %.1f vs %.1f lidout now %.1f hot %.1f mean %.1f\n",r.D,gap,r.top,r.h,r.lid,at,t.edge_c,share,1/(1+x*gap),100*((t.sheath_c-20)/(r.sheath-20)-1),t.wall_c,r.wall,t.lid_c,20+(r.lid-20)*std::min(1.,r.top/8),20+(r.mean-20)*std::min(1.,r.top/8));
    }
    auto pipe=[&](double mm,double P){Store s=small_pot(); if(mm>0)s.spreader_diameter_mm=mm; return bed_temperatures(bed_of(s,rod_of(.22,2,.05),.27,5),P).sheath_c;};
    for(double P:{20.,50.,100.,200.,300.}) std::printf("P %g bare %.0f 10mm %.0f 12mm %.0f 21mm %.0f 40mm %.0f\n",P,pipe(0,P),pipe(10,P),pipe(12,P),pipe(21,P),pipe(40,P));
}
