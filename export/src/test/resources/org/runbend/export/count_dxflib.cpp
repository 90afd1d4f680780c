// Reads DXF files with dxflib and prints how many entities lie on each layer of model space, and how many on paper.
#include <cstdio>
#include <map>
#include <string>

#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

class Counter : public DL_CreationAdapter {
public:
    std::map<std::string, int> model;
    int paper = 0;

    void addBlock(const DL_BlockData&) override { inBlock = true; }
    void endBlock() override { inBlock = false; }
    void addPoint(const DL_PointData&) override { one(); }
    void addLine(const DL_LineData&) override { one(); }
    void addArc(const DL_ArcData&) override { one(); }
    void addCircle(const DL_CircleData&) override { one(); }
    void addEllipse(const DL_EllipseData&) override { one(); }
    void addPolyline(const DL_PolylineData&) override { one(); }
    void addSpline(const DL_SplineData&) override { one(); }
    void addInsert(const DL_InsertData&) override { one(); }
    void addText(const DL_TextData&) override { one(); }
    void addMText(const DL_MTextData&) override { one(); }
    void addSolid(const DL_SolidData&) override { one(); }
    void addTrace(const DL_TraceData&) override { one(); }
    void addHatch(const DL_HatchData&) override { one(); }
    void addDimAlign(const DL_DimensionData&, const DL_DimAlignedData&) override { one(); }
    void addDimLinear(const DL_DimensionData&, const DL_DimLinearData&) override { one(); }

private:
    bool inBlock = false;

    void one() {
        if (inBlock) {
            return;
        }
        if (attributes.isInPaperSpace()) {
            paper++;
        } else {
            model[attributes.getLayer()]++;
        }
    }
};

int main(int files, char** names) {
    for (int i = 1; i < files; i++) {
        Counter counter;
        DL_Dxf reader;
        if (!reader.in(names[i], &counter)) {
            std::printf("refused %s\n", names[i]);
            return 1;
        }
        for (const auto& layer : counter.model) {
            std::printf("count %s %d\n", layer.first.c_str(), layer.second);
        }
        std::printf("paper %d\n", counter.paper);
    }
    return 0;
}
